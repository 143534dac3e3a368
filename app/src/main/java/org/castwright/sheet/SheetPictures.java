package org.castwright.sheet;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import org.castwright.advice.PourAdvice;
import org.castwright.geom.Vec3;
import org.castwright.pictures.Guide;
import org.castwright.pictures.GuidePictures;
import org.castwright.pictures.MoldPictures;
import org.castwright.pictures.PictureOptions;
import org.castwright.pipeline.Report;
import org.castwright.progress.Beside;

/**
 * The pictures of a sheet, drawn ahead.
 *
 * @param steps one for each piece, in the order in which they leave
 * @param fill casting and channels colored by when the level comes by; null without a pour
 * @param smallFill the same with larger words
 */
public record SheetPictures(
    Guide closed,
    Guide opened,
    List<Guide> steps,
    Guide pour,
    BufferedImage fill,
    BufferedImage smallFill) {

  private static final int LARGE_WIDTH = 1120;
  private static final int LARGE_HEIGHT = 880;
  private static final int STEP_WIDTH = 760;
  private static final int STEP_HEIGHT = 700;
  private static final int WORDY_WIDTH = 620;
  private static final int WORDY_HEIGHT = 560;

  /** Draws them; the same for any number of threads. */
  public static SheetPictures of(SheetSource source, int threads) {
    PictureOptions large =
        PictureOptions.DEFAULT.withThreads(threads).sized(LARGE_WIDTH, LARGE_HEIGHT);
    List<MoldPictures.Piece> pieces =
        source.pieces().stream()
            .map(p -> new MoldPictures.Piece(p.name(), p.mesh(), p.pull()))
            .toList();
    MoldPictures mold = new MoldPictures(source.casting(), pieces, source.seam(), large);
    GuidePictures guide = new GuidePictures(mold, large);
    GuidePictures small = new GuidePictures(mold, large.sized(STEP_WIDTH, STEP_HEIGHT));
    Report.PourInfo pour = source.report().pour();
    Vec3 up = new Vec3(pour.up().get(0), pour.up().get(1), pour.up().get(2));
    // two pictures at a time: parts of each are for one thread
    Beside<Guide> closed = Beside.begin(guide::closed);
    Beside<Guide> opened = Beside.begin(guide::opened);
    Beside<Guide> poured =
        Beside.begin(() -> guide.pour(source.channels(), mouths(source.report()), up));
    Beside<BufferedImage> fill = Beside.begin(() -> fill(source, guide));
    List<Guide> steps = new ArrayList<>();
    for (int i = 0; i < pieces.size(); i++) {
      steps.add(small.step(i));
    }
    BufferedImage smallFill =
        fill(source, new GuidePictures(mold, large.sized(WORDY_WIDTH, WORDY_HEIGHT)));
    return new SheetPictures(
        closed.get(), opened.get(), steps, poured.get(), fill.get(), smallFill);
  }

  private static BufferedImage fill(SheetSource source, GuidePictures guide) {
    PourAdvice pour = source.report().pouring();
    if (pour == null) {
      return null;
    }
    Vec3 up = new Vec3(pour.up().get(0), pour.up().get(1), pour.up().get(2));
    return guide.fill(source.channels(), up, PourCharts.course(pour), PourCharts.air(pour));
  }

  /** Gates and vents, each with its letter and, where there are several, its number. */
  static List<GuidePictures.Mouth> mouths(Report report) {
    List<GuidePictures.Mouth> out = new ArrayList<>();
    for (String kind : List.of("gate", "vent")) {
      List<Report.ChannelInfo> same =
          report.channels().stream().filter(c -> c.kind().equals(kind)).toList();
      for (int i = 0; i < same.size(); i++) {
        List<List<Double>> axis = same.get(i).axis();
        List<Double> end = axis.get(axis.size() - 1);
        String letter = kind.equals("gate") ? "G" : "V";
        String label = same.size() == 1 ? letter : letter + (i + 1);
        Vec3 at = new Vec3(end.get(0), end.get(1), end.get(2));
        out.add(new GuidePictures.Mouth(at, label, kind.equals("gate")));
      }
    }
    return out;
  }
}
