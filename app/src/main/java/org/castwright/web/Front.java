package org.castwright.web;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The page as it is sent: samples, materials and the folder stand in its text, so that the first
 * paint has them and no call need be waited for.
 */
final class Front {

  /** Before and after each comment of the page, in whose places they stand. */
  private static final Pattern PLACES = Pattern.compile("(?=<!-- )|(?<= -->)");

  private Front() {}

  /**
   * Writes the page in its order, each part as soon as it is known: a browser paints what stands
   * above while the table of materials is still being read, as in the first second of a start.
   */
  static void write(OutputStream out, String page, Path folder) throws IOException {
    for (String part : PLACES.split(page, -1)) {
      if (part.startsWith("<!-- ")) {
        out.flush();
      }
      out.write(filled(part, folder).getBytes(StandardCharsets.UTF_8));
    }
  }

  private static String filled(String part, Path folder) {
    return switch (part) {
      case "<!-- folder -->" -> plain(folder.toString());
      case "<!-- samples -->" -> joined(Models.samples().stream().map(Front::button));
      case "<!-- use -->" -> plain(use(MaterialCard.all().get(0)));
      case "<!-- materials -->" -> joined(MaterialCard.all().stream().map(Front::option));
      default -> part;
    };
  }

  private static String joined(Stream<String> parts) {
    return parts.collect(Collectors.joining("\n"));
  }

  private static String button(Models.Card s) {
    return "<button type=\"button\" value=\"%s\" data-material=\"%s\">%s</button>"
        .formatted(plain(s.sample()), plain(s.material()), plain(s.title()));
  }

  private static String option(MaterialCard m) {
    String ground = "Shrink: " + m.shrinkSource() + ". " + m.notes();
    return "<option value=\"%s\" data-use=\"%s\" title=\"%s\">%s</option>"
        .formatted(plain(m.id()), plain(use(m)), plain(ground), plain(m.name()));
  }

  /** What a material asks, in one line. */
  private static String use(MaterialCard m) {
    String pour =
        m.pourC().stream()
            .map(t -> String.format(Locale.ROOT, "%,.0f", t))
            .collect(Collectors.joining("–"));
    return String.format(Locale.ROOT, "shrinks %,.2f %%, poured at %s °C", m.shrinkPercent(), pour);
  }

  /** Words that cannot be taken for markup. */
  private static String plain(String words) {
    return words
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
