package org.castwright.meshio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.castwright.meshio.PlyHeader.NumberType;

/** PLY data as packed numbers of either byte order. */
final class PlyBinary implements PlyBody {

  /** Text over so many bytes at the start is not taken for packed numbers. */
  private static final int TEXT_SAMPLE = 4096;

  private final Source source;
  private final ByteBuffer data;
  private String element = "";
  private int row;

  PlyBinary(Source source, int start, ByteOrder order) {
    this.source = source;
    this.data = ByteBuffer.wrap(source.bytes()).order(order);
    data.position(start);
    if (FormatGuess.isText(source.bytes(), start, start + TEXT_SAMPLE)) {
      throw source.fault(
          "byte " + start,
          "the header promises binary data but text follows",
          "write 'format ascii 1.0' in its second line if that is what it is");
    }
  }

  @Override
  public void beginRow(String name, int index) {
    element = name;
    row = index;
    source.progress(index, data.position(), data.limit());
  }

  @Override
  public double number(NumberType type, boolean finite) {
    need(type);
    double value =
        switch (type) {
          case FLOAT32 -> data.getFloat();
          case FLOAT64 -> data.getDouble();
          default -> whole(type);
        };
    if (finite && !Double.isFinite(value)) {
      throw source.fault(
          where(),
          "a coordinate is " + value + ", not a finite number",
          "repair the model in the program that made it");
    }
    return value;
  }

  @Override
  public long integer(NumberType type) {
    need(type);
    return whole(type);
  }

  private long whole(NumberType type) {
    return switch (type) {
      case INT8 -> data.get();
      case UINT8 -> data.get() & 0xff;
      case INT16 -> data.getShort();
      case UINT16 -> data.getShort() & 0xffff;
      case INT32 -> data.getInt();
      case UINT32 -> data.getInt() & 0xffffffffL;
      case FLOAT32, FLOAT64 -> throw new IllegalArgumentException("not a whole type: " + type);
    };
  }

  private void need(NumberType type) {
    if (data.remaining() < type.bytes) {
      throw source.fault(
          where(), "the file ends inside this row", "it was cut short, " + Source.EXPORT_AGAIN);
    }
  }

  @Override
  public void endRow() {}

  @Override
  public void end() {
    int left = data.remaining();
    while (data.hasRemaining()) {
      int b = data.get();
      if (b != 0 && b != '\n' && b != '\r') {
        throw source.fault(
            "byte " + (data.position() - 1),
            left + " bytes follow that the header does not promise",
            "the counts are wrong, " + Source.EXPORT_AGAIN);
      }
    }
  }

  @Override
  public String where() {
    return "row " + row + " of '" + element + "' (byte " + data.position() + ")";
  }
}
