package org.castwright.pictures;

import java.util.List;
import java.util.Optional;

/** All that one picture shows. */
public record Scene(
    String caption,
    List<Item> items,
    List<Polyline> lines,
    List<Mark> marks,
    List<Swatch> legend,
    Optional<ColorScale> scale) {

  public Scene {
    items = List.copyOf(items);
    lines = List.copyOf(lines);
    marks = List.copyOf(marks);
    legend = List.copyOf(legend);
  }

  public static Scene of(String caption, List<Item> items) {
    return new Scene(caption, items, List.of(), List.of(), List.of(), Optional.empty());
  }

  public Scene captioned(String newCaption) {
    return new Scene(newCaption, items, lines, marks, legend, scale);
  }

  public Scene withLines(List<Polyline> newLines) {
    return new Scene(caption, items, newLines, marks, legend, scale);
  }

  public Scene withMarks(List<Mark> newMarks) {
    return new Scene(caption, items, lines, newMarks, legend, scale);
  }

  public Scene withLegend(List<Swatch> newLegend) {
    return new Scene(caption, items, lines, marks, newLegend, scale);
  }

  /** The scene with a scale bar on its right. */
  public Scene withScale(ColorScale newScale) {
    return new Scene(caption, items, lines, marks, legend, Optional.of(newScale));
  }
}
