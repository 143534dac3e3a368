package org.castwright.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The type the sheet is set in: Liberation Sans (SIL Open Font License), which comes with PDFBox,
 * embedded so that every viewer and printer shows the same. Bold is the same face drawn with an
 * outline.
 */
final class Type {

  private static final String FACE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

  /** Outline of bold letters as a share of their size. */
  static final float BOLD = 0.032f;

  /** A space at which lines do not break; drawn as a plain one. */
  static final char NO_BREAK = '\u00a0';

  /** Stands for what the face does not have. */
  private static final String UNKNOWN = "?";

  private final PDFont face;

  Type(PDDocument document) throws IOException {
    try (InputStream in = PDDocument.class.getResourceAsStream(FACE)) {
      if (in == null) {
        throw new IllegalStateException("the PDF library no longer brings " + FACE);
      }
      face = PDType0Font.load(document, in, true);
    }
  }

  PDFont face() {
    return face;
  }

  /** Width of one line, points. */
  float width(String text, float size) {
    try {
      return face.getStringWidth(known(text)) / 1000 * size;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The text with what the face cannot show replaced. */
  String known(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              String s = Character.toString(c);
              out.append(c == NO_BREAK || Character.isISOControl(c) ? " " : has(s) ? s : UNKNOWN);
            });
    return out.toString();
  }

  private boolean has(String s) {
    try {
      return face.encode(s).length > 0;
    } catch (IllegalArgumentException | IOException e) {
      // this is how the library says that a letter is missing
      return false;
    }
  }

  /** Breaks a text into lines no wider than {@code width} points; long words are broken too. */
  List<String> lines(String text, float size, float width) {
    List<String> out = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      String rest = word;
      String joined = line.isEmpty() ? rest : line + " " + rest;
      if (width(joined, size) <= width) {
        line.setLength(0);
        line.append(joined);
        continue;
      }
      if (!line.isEmpty()) {
        out.add(line.toString());
        line.setLength(0);
      }
      while (width(rest, size) > width && rest.length() > 1) {
        int n = fitting(rest, size, width);
        out.add(rest.substring(0, n));
        rest = rest.substring(n);
      }
      line.append(rest);
    }
    out.add(line.toString());
    return out;
  }

  private int fitting(String word, float size, float width) {
    int n = 1;
    while (n < word.length() && width(word.substring(0, n + 1), size) <= width) {
      n++;
    }
    return n;
  }
}
