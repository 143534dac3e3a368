package org.castwright.meshio;

/** The kinds of model file that can be read. */
public enum Format {
  STL_BINARY("binary STL"),
  STL_TEXT("text STL"),
  OBJ("OBJ"),
  PLY("PLY"),
  OFF("OFF"),
  THREE_MF("3MF");

  private final String title;

  Format(String title) {
    this.title = title;
  }

  /** The name to show a person. */
  public String title() {
    return title;
  }
}
