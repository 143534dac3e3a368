package org.castwright.meshio;

import java.util.Locale;
import org.castwright.mesh.MeshException;

/** Tells what a file is from its bytes, and only where they leave it open from its name. */
final class FormatGuess {

  /** How far to look for the words that give text STL away; headers may be long. */
  private static final int STL_WINDOW = 1 << 16;

  /** How far to look for bytes that are not text. */
  private static final int TEXT_WINDOW = 1 << 12;

  private static final String ASK =
      "give an STL, OBJ, PLY, OFF or 3MF file, or export the model as one of these";

  private FormatGuess() {}

  static Format of(Source source) {
    byte[] b = source.bytes();
    if (b.length == 0) {
      throw source.fault("byte 0", "the file is empty", Source.EXPORT_AGAIN);
    }
    if (b.length > 3 && b[0] == 'P' && b[1] == 'K' && b[2] < 9 && b[3] < 9) {
      return Format.THREE_MF;
    }
    if (source.hasWord(textStart(source), "ply")
        && b.length > 3
        && b[textStart(source) + 3] < ' ') {
      return Format.PLY;
    }
    if (StlBinaryReader.fits(source)) {
      return Format.STL_BINARY;
    }
    if (hasFacets(source)) {
      return Format.STL_TEXT;
    }
    return isText(b, 0, TEXT_WINDOW) ? ofText(source) : ofBinary(source);
  }

  private static Format ofText(Source source) {
    TextCursor in = new TextCursor(source, textStart(source), '#');
    if (in.nextLine()) {
      String word = in.word().toLowerCase(Locale.ROOT);
      if (word.matches("(st)?c?n?4?n?off")) {
        return Format.OFF;
      }
      if (word.matches("v|vn|vt|f|g|o|s|mtllib|usemtl")) {
        return Format.OBJ;
      }
      if (word.equals("solid")) {
        return Format.STL_TEXT;
      }
    }
    Format named = byName(source);
    if (named == Format.STL_BINARY) {
      throw source.fault(
          "line 1", "this is text but holds no 'facet', so it is no STL file", Source.EXPORT_AGAIN);
    }
    if (named == Format.THREE_MF) {
      throw source.fault("byte 0", "this is no zip, so it is no 3MF file", Source.EXPORT_AGAIN);
    }
    return named;
  }

  private static Format ofBinary(Source source) {
    Format named = byName(source);
    if (named == Format.STL_BINARY) {
      return named;
    }
    throw source.fault(
        "byte 0", "the name says " + named.title() + " but the bytes do not", Source.EXPORT_AGAIN);
  }

  private static Format byName(Source source) {
    String name = source.name().toLowerCase(Locale.ROOT).replaceAll("\\.gz$", "");
    String ending = name.substring(name.lastIndexOf('.') + 1);
    return switch (ending) {
      case "stl" -> Format.STL_BINARY;
      case "obj" -> Format.OBJ;
      case "ply" -> Format.PLY;
      case "off" -> Format.OFF;
      case "3mf" -> Format.THREE_MF;
      default -> throw unknown(source);
    };
  }

  private static MeshException unknown(Source source) {
    String what =
        source.hasWord(0, "iso-10303-21")
            ? "this is a STEP file, which holds surfaces, not triangles"
            : "this is no kind of model file known here, it begins with "
                + source.quote(0, source.length());
    return source.fault("byte 0", what, ASK);
  }

  /** Whether a facet of text STL is near the start, whatever the header looks like. */
  private static boolean hasFacets(Source source) {
    byte[] b = source.bytes();
    int end = Math.min(b.length, STL_WINDOW);
    for (int i = 0; i < end; i++) {
      if ((b[i] == 'f' || b[i] == 'F') && source.hasWord(i, "facet")) {
        int j = i + 5;
        while (j < b.length && b[j] == ' ') {
          j++;
        }
        if (source.hasWord(j, "normal") || source.hasWord(j, "outer")) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether the bytes from one place to another (or the end) are text; nothing is not. */
  static boolean isText(byte[] b, int from, int to) {
    int end = Math.min(b.length, to);
    for (int i = from; i < end; i++) {
      // bytes above 127 are negative: letters in UTF-8
      if (b[i] >= 0 && b[i] < ' ' && (b[i] < '\t' || b[i] > '\r')) {
        return false;
      }
    }
    return end > from;
  }

  /** Where the text begins: behind the mark that some programs put before UTF-8. */
  static int textStart(Source source) {
    byte[] b = source.bytes();
    boolean mark =
        b.length > 3 && (b[0] & 0xff) == 0xef && (b[1] & 0xff) == 0xbb && (b[2] & 0xff) == 0xbf;
    return mark ? 3 : 0;
  }
}
