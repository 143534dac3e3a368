package org.castwright.heat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Follows a run: when each cell of the casting sets, how hot it gets, and how far all is. */
final class Watch {

  private static final int MOST_SAMPLES = 200;

  private final Voxels voxels;
  private final WallWatch wall;
  private final Crew crew;
  private final int castingCells;
  private final float[] setS;
  private final double[] layerHottest;
  private final int[] layerHottestCell;
  private final int[] layerSet;
  private final List<HeatResult.Sample> samples = new ArrayList<>();

  private double hottestC;
  private double hottestBeforeC;
  private double peakC = Double.NEGATIVE_INFINITY;
  private int peakCell;
  private double peakS;
  private int set;

  Watch(Voxels voxels, WallWatch wall, Crew crew) {
    this.voxels = voxels;
    this.wall = wall;
    this.crew = crew;
    this.castingCells = voxels.count(Voxels.CASTING);
    this.setS = new float[voxels.kind.length];
    this.layerHottest = new double[voxels.cells.nz()];
    this.layerHottestCell = new int[voxels.cells.nz()];
    this.layerSet = new int[voxels.cells.nz()];
    Arrays.fill(setS, Float.NaN);
  }

  /** What tells set from unset: a cell is set when its measure has come up to the threshold. */
  @SuppressWarnings("ArrayRecordComponent") // the run's own arrays, never compared
  record Measure(double[] before, double[] now, double threshold, double sign) {

    /** Share of the last step after which a cell set; negative while it is not set. */
    double when(int c) {
      double b = sign * (before[c] - threshold);
      double n = sign * (now[c] - threshold);
      return n < 0 ? -1 : b >= 0 ? 0 : b / (b - n);
    }
  }

  /** Looks after a step, or at the start with a step of 0. */
  void look(double timeS, double stepS, double[] heat, double[] celsius, Measure measure) {
    Cells cells = voxels.cells;
    int plane = cells.nx() * cells.ny();
    crew.each(0, cells.nz(), k -> layer(k, plane, timeS - stepS, stepS, celsius, measure));
    hottestBeforeC = hottestC;
    hottestC = Double.NEGATIVE_INFINITY;
    set = 0;
    int cell = 0;
    for (int k = 0; k < cells.nz(); k++) {
      set += layerSet[k];
      if (layerHottest[k] > hottestC) {
        hottestC = layerHottest[k];
        cell = layerHottestCell[k];
      }
    }
    if (hottestC > peakC) {
      peakC = hottestC;
      peakCell = cell;
      peakS = timeS;
    }
    wall.look(timeS, heat, celsius);
    samples.add(new HeatResult.Sample(timeS, hottestC, setShare(), wall.nowC()));
  }

  private void layer(
      int k, int plane, double fromS, double stepS, double[] celsius, Measure measure) {
    double hottest = Double.NEGATIVE_INFINITY;
    int hottestCell = 0;
    int count = 0;
    for (int c = k * plane; c < (k + 1) * plane; c++) {
      if (voxels.kind[c] != Voxels.CASTING) {
        continue;
      }
      if (celsius[c] > hottest) {
        hottest = celsius[c];
        hottestCell = c;
      }
      double share = measure.when(c);
      if (share < 0) {
        // what had set can melt again beside a hotter place
        setS[c] = Float.NaN;
      } else {
        count++;
        if (Float.isNaN(setS[c])) {
          setS[c] = (float) (fromS + share * stepS);
        }
      }
    }
    layerHottest[k] = hottest;
    layerHottestCell[k] = hottestCell;
    layerSet[k] = count;
  }

  boolean allSet() {
    return set == castingCells;
  }

  double setShare() {
    return (double) set / castingCells;
  }

  double hottestC() {
    return hottestC;
  }

  /** The share of the last step after which the hottest place had cooled to a temperature. */
  double cooledWhen(double toC) {
    double fall = hottestBeforeC - hottestC;
    return fall > 0 ? Math.max(0, Math.min(1, (hottestBeforeC - toC) / fall)) : 0;
  }

  double peakC() {
    return peakC;
  }

  double peakS() {
    return peakS;
  }

  /** Where; null when nothing got hotter than the pour. */
  HeatResult.Place peakPlace() {
    return peakS == 0 ? null : HeatResult.Place.of(voxels.cells.middle(peakCell));
  }

  /** When each cell of the casting set for the last time, s; NaN for others. */
  float[] setS() {
    return setS;
  }

  /** Some of the moments, evenly picked, the last among them. */
  List<HeatResult.Sample> samples() {
    int n = samples.size();
    if (n <= MOST_SAMPLES) {
      return List.copyOf(samples);
    }
    List<HeatResult.Sample> out = new ArrayList<>();
    for (int i = 0; i < MOST_SAMPLES; i++) {
      out.add(samples.get((int) ((long) i * (n - 1) / (MOST_SAMPLES - 1))));
    }
    return out;
  }
}
