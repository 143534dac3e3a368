package org.castwright.meshio;

import org.castwright.meshio.PlyHeader.NumberType;

/** PLY data as text, one row on a line. */
final class PlyText implements PlyBody {

  private final TextCursor in;

  PlyText(TextCursor in) {
    this.in = in;
  }

  @Override
  public void beginRow(String element, int row) {
    if (!in.nextLine()) {
      throw in.fault(
          "the file ends before row " + row + " of '" + element + "'",
          "it was cut short, " + Source.EXPORT_AGAIN);
    }
  }

  @Override
  public double number(NumberType type, boolean finite) {
    if (finite) {
      return in.number("a coordinate");
    }
    if (!in.hasWord()) {
      throw in.fault("a number is missing where the line ends", Source.EXPORT_AGAIN);
    }
    in.skipWord();
    return Double.NaN;
  }

  @Override
  public long integer(NumberType type) {
    return in.integer("a whole number");
  }

  @Override
  public void endRow() {
    if (in.hasWord()) {
      throw in.fault(
          "the line has more numbers than the header promises, the first is " + in.quote(),
          Source.EXPORT_AGAIN);
    }
  }

  @Override
  public void end() {
    if (in.nextLine()) {
      throw in.fault(
          "more lines follow than the header promises",
          "the counts are wrong, " + Source.EXPORT_AGAIN);
    }
  }

  @Override
  public String where() {
    return "line " + in.line();
  }
}
