package org.castwright.meshio;

import java.util.ArrayList;
import java.util.List;

/** The text before the data of a PLY file: how it is stored and which elements follow. */
final class PlyHeader {

  enum Encoding {
    ASCII,
    LITTLE_ENDIAN,
    BIG_ENDIAN
  }

  enum NumberType {
    INT8(1, "char", "int8"),
    UINT8(1, "uchar", "uint8"),
    INT16(2, "short", "int16"),
    UINT16(2, "ushort", "uint16"),
    INT32(4, "int", "int32"),
    UINT32(4, "uint", "uint32"),
    FLOAT32(4, "float", "float32"),
    FLOAT64(8, "double", "float64");

    final int bytes;
    private final String oldName;
    private final String newName;

    NumberType(int bytes, String oldName, String newName) {
      this.bytes = bytes;
      this.oldName = oldName;
      this.newName = newName;
    }

    boolean isWhole() {
      return this != FLOAT32 && this != FLOAT64;
    }
  }

  /**
   * One value of each row.
   *
   * @param count the type of the length before a list, null for a single value
   */
  record Property(String name, NumberType count, NumberType type) {
    boolean isList() {
      return count != null;
    }
  }

  record Element(String name, int rows, List<Property> properties) {
    int indexOf(String property) {
      for (int i = 0; i < properties.size(); i++) {
        if (properties.get(i).name().equals(property)) {
          return i;
        }
      }
      return -1;
    }
  }

  private static final String NOT_PLY = "save it as plain PLY";

  private final Source source;
  private final TextCursor in;
  private Encoding encoding;
  private final List<Element> elements = new ArrayList<>();

  private PlyHeader(Source source, TextCursor in) {
    this.source = source;
    this.in = in;
  }

  /** Reads the header; the cursor then stands at the end of its last line. */
  static PlyHeader read(Source source, TextCursor in) {
    PlyHeader h = new PlyHeader(source, in);
    h.parse();
    return h;
  }

  Encoding encoding() {
    return encoding;
  }

  List<Element> elements() {
    return elements;
  }

  private void parse() {
    if (!in.nextLine() || !in.take("ply")) {
      throw in.fault("'ply' was expected, not " + in.quote(), NOT_PLY);
    }
    while (true) {
      if (!in.nextLine()) {
        throw in.fault("the file ends inside the header", "it was cut short, export it again");
      }
      if (in.take("end_header")) {
        break;
      } else if (in.take("format")) {
        format();
      } else if (in.take("element")) {
        element();
      } else if (in.take("property")) {
        property();
      } else if (!in.take("comment") && !in.take("obj_info")) {
        throw in.fault("unknown word " + in.quote() + " in the header", NOT_PLY);
      }
    }
    if (encoding == null) {
      throw in.fault("the header has no 'format' line", NOT_PLY);
    }
    for (Element e : elements) {
      checkRoom(e);
    }
  }

  private void format() {
    if (in.take("ascii")) {
      encoding = Encoding.ASCII;
    } else if (in.take("binary_little_endian")) {
      encoding = Encoding.LITTLE_ENDIAN;
    } else if (in.take("binary_big_endian")) {
      encoding = Encoding.BIG_ENDIAN;
    } else {
      throw in.fault("unknown format " + in.quote(), NOT_PLY);
    }
  }

  private void element() {
    String name = in.word();
    long rows = in.integer("the number of rows");
    if (rows < 0 || rows > Integer.MAX_VALUE) {
      throw tooMany(name, rows);
    }
    elements.add(new Element(name, (int) rows, new ArrayList<>()));
  }

  private void property() {
    if (elements.isEmpty()) {
      throw in.fault("a property stands before the first element", NOT_PLY);
    }
    boolean list = in.take("list");
    NumberType count = list ? type() : null;
    if (list && !count.isWhole()) {
      throw in.fault("a list cannot have a length that is not whole", NOT_PLY);
    }
    NumberType type = type();
    elements.get(elements.size() - 1).properties().add(new Property(in.word(), count, type));
  }

  private NumberType type() {
    for (NumberType t : NumberType.values()) {
      if (in.take(t.oldName) || in.take(t.newName)) {
        return t;
      }
    }
    throw in.fault("unknown number type " + in.quote(), NOT_PLY);
  }

  /** Refuses rows that cannot fit in the bytes left, before anybody makes room for them. */
  private void checkRoom(Element e) {
    long shortest = 0;
    for (Property p : e.properties()) {
      NumberType first = p.isList() ? p.count() : p.type();
      // in text a digit and a gap
      shortest += encoding == Encoding.ASCII ? 2 : first.bytes;
    }
    long left = source.length() + 1L - in.position();
    if (e.rows() > 0 && (shortest == 0 || shortest * e.rows() > left)) {
      throw tooMany(e.name(), e.rows());
    }
  }

  private RuntimeException tooMany(String name, long rows) {
    return in.fault(
        "the header promises "
            + rows
            + " rows of '"
            + name
            + "', which do not fit in the "
            + source.length()
            + " bytes of the file",
        "it was cut short or damaged, " + Source.EXPORT_AGAIN);
  }
}
