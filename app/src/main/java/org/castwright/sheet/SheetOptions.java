package org.castwright.sheet;

/** How the sheet is printed. */
public record SheetOptions(Paper paper, Units units) {

  public static final SheetOptions DEFAULT = new SheetOptions(Paper.A4, Units.METRIC);
}
