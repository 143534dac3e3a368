package org.castwright.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.castwright.pipeline.Report;

/** The proof in a dozen lines: checks by what they are about. */
final class ProofTable {

  /** The first words of a check's name and what they mean; others are told by their own name. */
  private static final Map<String, String> MEANING =
      Map.ofEntries(
          Map.entry("body", "Bodies are closed, whole and free of crossings"),
          Map.entry("bed", "Pieces fit the printer as they stand"),
          Map.entry("print", "Print files are the same pieces and stand on the bed"),
          Map.entry("bodies disjoint", "No two bodies overlap in the closed mold"),
          Map.entry("volume balance", "Volumes add up to the block"),
          Map.entry("key", "Keys slide along the pull, with the gap asked"),
          Map.entry("gate", "The gate joins the cavity, reaches the outside and is open"),
          Map.entry("vent", "Vents join the cavity, reach the outside and are open"),
          Map.entry("wall", "The wall round the cavity is thick enough"),
          Map.entry("filling", "The rising level leaves no air and runs out nowhere"),
          Map.entry("opening", "Pieces leave in their order and catch nothing"),
          Map.entry("shake", "Directions 1° and 2° off the pull that are free, too"),
          Map.entry("wedge", "Edges along the seam are not too thin"),
          Map.entry("thin", "Walls and webs of the pieces are thick enough"));

  private static final float LETTERS = 8;

  private final Report.ProofInfo proof;
  private final Units units;

  ProofTable(Report.ProofInfo proof, Units units) {
    this.proof = proof;
    this.units = units;
  }

  Table table() {
    Map<String, List<Report.CheckInfo>> families = new LinkedHashMap<>();
    for (Report.CheckInfo c : proof.checks()) {
      String family = c.name().split(":", 2)[0];
      families.computeIfAbsent(family, f -> new ArrayList<>()).add(c);
    }
    List<List<String>> rows = new ArrayList<>();
    families.forEach(
        (family, checks) -> {
          long passed = checks.stream().filter(Report.CheckInfo::passed).count();
          rows.add(
              List.of(
                  MEANING.getOrDefault(family, family),
                  Units.of("%d of %d", passed, checks.size()),
                  measured(checks)));
        });
    return new Table(
        List.of(0.56f, 0.14f, 0.3f),
        List.of("Check", "Passed", "Least measured"),
        rows,
        new Style(LETTERS, false, Style.INK),
        0);
  }

  /** The least of what must not be small; nothing for checks of yes and no. */
  private String measured(List<Report.CheckInfo> checks) {
    double least = Double.POSITIVE_INFINITY;
    String unit = "";
    for (Report.CheckInfo c : checks) {
      if (c.value() != null && c.unit().endsWith("at least")) {
        least = Math.min(least, c.value());
        unit = c.unit().replace(" at least", "");
      }
    }
    return switch (unit) {
      case "mm" -> units.length(least);
      case "°" -> Units.of("%.0f°", least);
      case "of the directions" -> Units.of("%.0f %% of those tried", 100 * least);
      default -> "";
    };
  }
}
