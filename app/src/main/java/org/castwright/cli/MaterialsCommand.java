package org.castwright.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.castwright.material.Figure;
import org.castwright.material.Material;
import org.castwright.material.Materials;
import org.castwright.material.Quantity;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code castwright materials [NAME]}. */
@Command(
    name = "materials",
    description =
        "Lists the casting materials, or all that is known of one, each figure with its source.",
    footerHeading = Examples.HEADING,
    footer = {"  castwright materials", "  castwright materials plaster-pottery"},
    mixinStandardHelpOptions = true)
final class MaterialsCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "NAME",
      description = "One material, or FILE.json:ID from a table of your own.")
  private String name;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    if (name == null) {
      Materials.all().forEach(m -> out.println(line(m)));
    } else {
      show(out, Materials.find(name));
    }
    out.flush();
    return Exit.OK.code();
  }

  private static String line(Material m) {
    return String.format(
        Locale.ROOT,
        "%-20s %-38s shrink %s  %s  %s",
        m.id(),
        m.name(),
        m.shrink() == null ? "unknown" : format("%5.2f %%", m.shrink().percent()),
        m.density() == null ? "density unknown" : format("%5.0f kg/m³", m.density().kgPerM3()),
        m.shrink() == null ? "give it in a table of your own" : m.shrink().source());
  }

  private static void show(PrintWriter out, Material m) {
    out.println(m.id() + ": " + m.name());
    Material.Shrink s = m.shrink();
    row(
        out,
        "shrink, linear",
        s == null ? null : range(s.lowPercent(), s.highPercent(), s.percent()) + " %",
        s == null ? null : s.source());
    Material.Density d = m.density();
    row(
        out,
        "density to weigh with",
        d == null ? null : number(d.kgPerM3()) + " kg/m³",
        d == null ? null : d.source());
    Material.DemoldStrain e = m.demoldStrain();
    row(
        out,
        "strain when opening",
        e == null ? null : number(100 * e.share()) + " %",
        e == null ? null : e.source());
    Map<Quantity, Figure> figures = new TreeMap<>(m.figures());
    for (Quantity q : List.of(Quantity.LIQUID_DENSITY, Quantity.VISCOSITY)) {
      if (!figures.containsKey(q)) {
        row(out, q.words(), null, null);
      }
    }
    figures.forEach(
        (q, f) ->
            row(out, q.words(), range(f.low(), f.high(), f.usual()) + " " + q.unit(), f.source()));
    String rule = "common practice, no source";
    row(out, "pour at", times(m.pourC(), "°C"), rule);
    if (m.workingTimeMin() == null) {
      out.println("  working time                   not stated; a melt has none");
    } else {
      row(out, "working time", times(m.workingTimeMin(), "min"), rule);
    }
    row(out, "time to open", times(m.demoldTimeMin(), "min"), rule);
    row(
        out,
        "gate, vent, head",
        format("%.1f, %.1f, %.0f mm", m.gateMm(), m.ventMm(), m.headMm()),
        rule);
    row(
        out,
        "better filled",
        m.filling() == null
            ? null
            : (m.filling().bottom() ? "from below: " : "from the top: ") + m.filling().words(),
        m.filling() == null ? null : m.filling().source());
    if (m.mix() != null) {
      row(out, "mix", m.mix().words(), m.mix().source());
    }
    row(
        out,
        "release",
        m.release() == null ? null : m.release().words(),
        m.release() == null ? null : m.release().source());
    out.println("  note: " + m.notes());
    m.cautions().forEach(c -> out.println("  caution: " + c));
    if (!m.gaps().isEmpty()) {
      out.println(
          "  A mold for it needs its "
              + String.join(" and ", m.gaps())
              + " from a table of your own: FILE.json:"
              + m.id());
    }
  }

  private static void row(PrintWriter out, String what, String value, String source) {
    String text = value == null ? "not known" : value + "  [" + source + "]";
    out.println(String.format(Locale.ROOT, "  %-30s %s", what, text));
  }

  private static String times(List<Double> values, String unit) {
    if (values == null || values.isEmpty()) {
      return null;
    }
    double low = values.get(0);
    double high = values.get(values.size() - 1);
    return (low == high ? number(low) : number(low) + " to " + number(high)) + " " + unit;
  }

  private static String range(double low, double high, double usual) {
    if (low == high) {
      return number(low);
    }
    String word = usual == (low + high) / 2 ? ", middle " : ", usually ";
    return number(low) + " to " + number(high) + word + number(usual);
  }

  /** Up to six digits, no zeros behind. */
  private static String number(double v) {
    String s = format("%.6g", v);
    if (s.contains("e")) {
      return s;
    }
    return s.contains(".") ? s.replaceAll("0+$", "").replaceAll("\\.$", "") : s;
  }

  private static String format(String f, Object... args) {
    return String.format(Locale.ROOT, f, args);
  }
}
