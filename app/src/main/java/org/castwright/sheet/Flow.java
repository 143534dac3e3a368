package org.castwright.sheet;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Sets elements one below the other and begins new pages. */
final class Flow {

  private static final float MARGIN = 40;
  private static final float FOOT = 26;

  private final PDDocument document;
  private final Type type;
  private final PDRectangle size;
  private final List<PDPage> pages = new ArrayList<>();
  private PDPageContentStream stream;
  private Pen pen;
  private float y;

  Flow(PDDocument document, Type type, Paper paper) {
    this.document = document;
    this.type = type;
    this.size = paper.size();
  }

  float width() {
    return size.getWidth() - 2 * MARGIN;
  }

  private float bottom() {
    return size.getHeight() - MARGIN - FOOT / 2;
  }

  /** Sets elements that stay together on one page. */
  void add(Element... together) throws IOException {
    Column all = Column.of(together);
    float h = all.height(type, width());
    if (pen == null || y + h > bottom()) {
      page();
    }
    all.draw(pen, MARGIN, y, width());
    y += h;
  }

  /** True if these still fit on this page. */
  boolean fits(Element... together) {
    return pen != null && y + Column.of(together).height(type, width()) <= bottom();
  }

  private void page() throws IOException {
    close();
    PDPage page = new PDPage(size);
    document.addPage(page);
    pages.add(page);
    stream = new PDPageContentStream(document, page);
    pen = new Pen(stream, type, size.getHeight());
    y = MARGIN;
  }

  private void close() throws IOException {
    if (stream != null) {
      stream.close();
      stream = null;
    }
  }

  /** Ends the last page and writes the line at the foot of each. */
  void finish(String foot) throws IOException {
    close();
    for (int i = 0; i < pages.size(); i++) {
      try (PDPageContentStream s =
          new PDPageContentStream(
              document, pages.get(i), PDPageContentStream.AppendMode.APPEND, true, true)) {
        Pen p = new Pen(s, type, size.getHeight());
        float base = size.getHeight() - MARGIN + 8;
        p.line(MARGIN, base - 11, MARGIN + width(), base - 11, Style.RULE, 0.5f);
        p.text(foot, MARGIN, base, Style.SMALL);
        String number = "page " + (i + 1) + " of " + pages.size();
        p.text(
            number, MARGIN + width() - type.width(number, Style.SMALL.size()), base, Style.SMALL);
      }
    }
  }
}
