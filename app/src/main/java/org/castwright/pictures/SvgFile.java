package org.castwright.pictures;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Writes charts beside each other as an SVG file; the same charts give the same bytes. */
public final class SvgFile {

  private static final double WIDTH = 300;
  private static final double HEIGHT = 220;
  private static final double GAP = 10;

  private SvgFile() {}

  /** Writes the charts and returns the file's name. */
  public static String write(List<Chart> charts, Path file) throws IOException {
    double all = charts.size() * WIDTH + (charts.size() + 1) * GAP;
    double high = HEIGHT + 2 * GAP;
    StringBuilder out = new StringBuilder();
    out.append(
        say(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0f\" height=\"%.0f\""
                + " viewBox=\"0 0 %.0f %.0f\" font-family=\"Liberation Sans, Arial, sans-serif\">\n",
            2 * all, 2 * high, all, high));
    out.append(
        say("<rect width=\"%.0f\" height=\"%.0f\" fill=\"%s\"/>\n", all, high, color(Band.PAPER)));
    Strokes strokes = new Strokes(out);
    for (int i = 0; i < charts.size(); i++) {
      ChartForm.draw(charts.get(i), strokes, GAP + i * (WIDTH + GAP), GAP, WIDTH, HEIGHT);
    }
    out.append("</svg>\n");
    Files.writeString(file, out.toString());
    return file.getFileName().toString();
  }

  private record Strokes(StringBuilder out) implements ChartCanvas {

    @Override
    public void stroke(double[] xy, int rgb, double width, boolean dashed) {
      StringBuilder points = new StringBuilder();
      for (int i = 0; i + 1 < xy.length; i += 2) {
        points.append(say(i == 0 ? "%.2f,%.2f" : " %.2f,%.2f", xy[i], xy[i + 1]));
      }
      out.append(
          say(
              "<polyline points=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%.1f\""
                  + " stroke-linejoin=\"round\"%s/>\n",
              points, color(rgb), width, dashed ? " stroke-dasharray=\"4 3\"" : ""));
    }

    @Override
    public void words(String text, double x, double y, double size, Stand stand, int rgb) {
      String anchor =
          switch (stand) {
            case BEGINS -> "start";
            case MIDDLE -> "middle";
            case ENDS -> "end";
          };
      String safe = text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
      out.append(
          say(
              "<text x=\"%.2f\" y=\"%.2f\" font-size=\"%.1f\" text-anchor=\"%s\" fill=\"%s\">%s"
                  + "</text>\n",
              x, y, size, anchor, color(rgb), safe));
    }
  }

  private static String color(int rgb) {
    return say("#%06x", rgb & 0xffffff);
  }

  private static String say(String format, Object... args) {
    return String.format(Locale.ROOT, format, args);
  }
}
