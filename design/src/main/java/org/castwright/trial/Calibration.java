package org.castwright.trial;

import java.util.ArrayList;
import java.util.List;
import org.castwright.size.Shrink;
import org.castwright.size.ShrinkChain;

/**
 * The maker's own readings, by material and printer, and what follows from them.
 *
 * @param readings in the order they came
 */
public record Calibration(List<Reading> readings) {

  /** Nothing read yet. */
  public static final Calibration NONE = new Calibration(List.of());

  /** So much a gap is changed when only one side of the right one is known, mm. */
  static final double STEP_MM = 0.05;

  /** More readings than this are kept by nobody's hand. */
  public static final int MOST = 10_000;

  public Calibration {
    readings = readings == null ? List.of() : List.copyOf(readings);
    if (readings.size() > MOST) {
      throw new IllegalArgumentException("a calibration holds at most 10000 readings");
    }
  }

  /** With further readings. */
  public Calibration with(List<Reading> more) {
    List<Reading> all = new ArrayList<>(readings);
    all.addAll(more);
    return new Calibration(all);
  }

  /** Without the reading at an index. */
  public Calibration without(int index) {
    List<Reading> all = new ArrayList<>(readings);
    all.remove(index);
    return new Calibration(all);
  }

  /**
   * What is known of a material on a printer.
   *
   * @param cast shrink from drawing to casting, print and casting together, or null
   * @param print shrink of the print alone, or null
   * @param clearanceMm gap of keys, or null
   * @param ventMm smallest bore that lets air through, or null
   * @param gateMm smallest bore the material runs through, or null
   */
  public record Own(
      LengthFit cast, LengthFit print, Double clearanceMm, Double ventMm, Double gateMm) {

    /** Whether nothing is known. */
    public boolean nothing() {
      return cast == null
          && print == null
          && clearanceMm == null
          && ventMm == null
          && gateMm == null;
    }

    /**
     * The shrink to allow for, percent: as cast, else the print's own on top of the table's; null
     * when neither is known.
     *
     * @param tablePercent of the material alone
     */
    public Double shrinkPercent(double tablePercent) {
      if (cast != null) {
        return cast.percent();
      }
      return print == null
          ? null
          : ShrinkChain.of(
                  new Shrink("print", print.percent()), new Shrink("casting", tablePercent))
              .percent();
    }
  }

  /** What the readings say of a material on a printer. */
  public Own of(String material, String printer, String process) {
    List<LengthFit.Pair> cast = new ArrayList<>();
    List<LengthFit.Pair> print = new ArrayList<>();
    List<Reading> keys = new ArrayList<>();
    Double vent = null;
    Double gate = null;
    for (Reading r : readings) {
      if (!r.printer().equals(printer)
          || !r.process().equals(process)
          || (r.kind().ofCasting() && !r.material().equals(material))) {
        continue;
      }
      switch (r.kind()) {
        case CAST_LENGTH -> cast.add(new LengthFit.Pair(r.drawnMm(), r.gotMm()));
        case PRINT_LENGTH -> print.add(new LengthFit.Pair(r.drawnMm(), r.gotMm()));
        case KEY_FIT -> keys.add(r);
        case VENT_BORE -> vent = smallest(vent, r);
        case GATE_BORE -> gate = smallest(gate, r);
      }
    }
    return new Own(
        cast.isEmpty() ? null : LengthFit.of(cast),
        print.isEmpty() ? null : LengthFit.of(print),
        gap(keys),
        vent,
        gate);
  }

  private static Double smallest(Double known, Reading r) {
    boolean better = r.fit() == Reading.Fit.GOOD && (known == null || r.drawnMm() < known);
    return better ? Double.valueOf(r.drawnMm()) : known;
  }

  /**
   * The smallest gap that went well above all that were tight; between tight and loose ones where
   * none went well; a step beyond where only one side is known.
   */
  private static Double gap(List<Reading> keys) {
    double tight = 0;
    double loose = Double.POSITIVE_INFINITY;
    for (Reading r : keys) {
      boolean narrow = r.fit() == Reading.Fit.NO || r.fit() == Reading.Fit.TIGHT;
      tight = narrow ? Math.max(tight, r.drawnMm()) : tight;
      loose = r.fit() == Reading.Fit.LOOSE ? Math.min(loose, r.drawnMm()) : loose;
    }
    double good = Double.POSITIVE_INFINITY;
    for (Reading r : keys) {
      boolean fits = r.fit() == Reading.Fit.GOOD && r.drawnMm() > tight;
      good = fits ? Math.min(good, r.drawnMm()) : good;
    }
    if (Double.isFinite(good)) {
      return good;
    }
    if (tight > 0 && Double.isFinite(loose) && loose > tight) {
      return rounded((tight + loose) / 2);
    }
    if (tight > 0) {
      return rounded(tight + STEP_MM);
    }
    return Double.isFinite(loose)
        ? Double.valueOf(rounded(Math.max(STEP_MM, loose - STEP_MM)))
        : null;
  }

  static double rounded(double mm) {
    return Math.rint(mm * 1000) / 1000;
  }
}
