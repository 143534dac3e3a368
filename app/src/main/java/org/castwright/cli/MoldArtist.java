package org.castwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.mold.Mold;
import org.castwright.mold.Piece;
import org.castwright.pictures.MoldPictures;
import org.castwright.pictures.Picture;
import org.castwright.pictures.PictureOptions;
import org.castwright.pictures.SvgFile;
import org.castwright.pipeline.Artist;
import org.castwright.pipeline.Report;
import org.castwright.progress.Progress;
import org.castwright.sheet.PourCharts;
import org.castwright.sheet.Sheet;
import org.castwright.sheet.SheetOptions;
import org.castwright.sheet.SheetPictures;
import org.castwright.sheet.SheetSource;
import org.castwright.survey.CaughtPlaces;

/** Draws a mold with the program's own renderer and writes its sheet for printing. */
final class MoldArtist implements Artist {

  private final int threads;
  private final SheetOptions sheet;

  MoldArtist(int threads, SheetOptions sheet) {
    this.threads = threads;
    this.sheet = sheet;
  }

  @Override
  public void draw(Path folder, Mold mold, Progress progress) throws IOException {
    // the plan's casting has the model's own facets, which the survey's numbers go with
    TriMesh casting = mold.plan().casting();
    MoldPictures pictures =
        new MoldPictures(
            casting,
            mold.pieces().stream()
                .map(p -> new MoldPictures.Piece(p.name(), p.mesh(), p.pull()))
                .toList(),
            mold.plan().seam().lines(),
            PictureOptions.DEFAULT.withThreads(threads));
    CaughtPlaces caught = mold.plan().survey().caught();
    pictures.closed(folder.resolve("closed.png"));
    pictures.opened(folder.resolve("opened.png"));
    for (int i = 0; i < mold.pieces().size(); i++) {
      pictures.piece(i, folder.resolve(mold.pieces().get(i).name() + ".png"));
    }
    List<Vec3> pulls = mold.pieces().stream().map(Piece::pull).toList();
    pictures.draft(draft(casting, pulls, caught), folder.resolve("draft.png"));
    String by = mold.plan().cover() == null ? null : "two opposite pieces";
    pictures.caught(
        Refusal.patches(caught, casting.triangleCount()), by, folder.resolve("caught.png"));
  }

  @Override
  public void finish(Path folder, Report report, Mold mold, Progress progress) throws IOException {
    CaughtPlaces caught = mold.plan().survey().caught();
    if (!caught.places().isEmpty()) {
      Refusal.view(mold.plan().casting(), caught, folder.resolve(Refusal.VIEW));
    }
    progress.at("sheet", 0);
    SheetSource source =
        new SheetSource(
            report,
            mold.casting(),
            mold.channels(),
            mold.pieces().stream()
                .map(p -> new SheetSource.Body(p.name(), p.mesh(), p.pull(), p.print()))
                .toList(),
            mold.plan().seam().lines());
    SheetPictures pictures = SheetPictures.of(source, threads);
    Picture.write(pictures.fill(), folder.resolve("pictures").resolve("fill.png"));
    SvgFile.write(PourCharts.of(report.pouring(), sheet.units()), folder.resolve("pour.svg"));
    Sheet.write(folder, source, pictures, sheet, folder.resolve(Sheet.NAME));
  }

  /**
   * Angle between each facet and the pull that suits it best, degrees; not a number where the facet
   * is caught.
   */
  private static double[] draft(TriMesh casting, List<Vec3> pulls, CaughtPlaces caught) {
    double[] out = new double[casting.triangleCount()];
    for (int f = 0; f < out.length; f++) {
      Vec3 a = casting.areaVector(f);
      double l = a.length();
      double most = pulls.stream().mapToDouble(a::dot).max().orElse(0);
      out[f] =
          caught.caught(f)
              ? Double.NaN
              : l > 0 ? Math.toDegrees(Math.asin(Math.max(0, Math.min(1, most / l)))) : 0;
    }
    return out;
  }
}
