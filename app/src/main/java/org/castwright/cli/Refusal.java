package org.castwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.cover.CaughtRegion;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.GlbWriter;
import org.castwright.meshio.NamedMesh;
import org.castwright.pictures.MoldPictures;
import org.castwright.pictures.PictureOptions;
import org.castwright.pipeline.Colors;
import org.castwright.pipeline.RefusalFolder;
import org.castwright.plan.CaughtException;
import org.castwright.survey.CaughtPlace;
import org.castwright.survey.CaughtPlaces;
import org.castwright.survey.SurveyResult;

/** What is written when a model cannot be molded as asked: the numbers and a picture. */
final class Refusal {

  static final String PICTURE = "pictures/caught.png";

  /** The caught places on the model, as binary glTF. */
  static final String VIEW = "caught.glb";

  /** Space that no piece frees. */
  static final String SPACES = "pictures/space.png";

  private Refusal() {}

  static void write(CaughtException e, Path output, int threads) throws IOException {
    RefusalFolder.write(
        e,
        output,
        dir -> {
          picture(e.scaled(), e.survey(), dir.resolve(PICTURE), threads);
          view(e.scaled(), e.survey().caught(), dir.resolve(VIEW));
          spaces(e, dir.resolve(SPACES), threads);
        });
  }

  /** Draws the space that stays caught with any number of pieces, if there is such. */
  private static void spaces(CaughtException e, Path file, int threads) throws IOException {
    if (e.unfreed().isEmpty()) {
      return;
    }
    List<MoldPictures.Space> spaces = new ArrayList<>();
    for (CaughtRegion r : e.unfreed()) {
      int[] facets = r.facets().stream().mapToInt(Integer::intValue).toArray();
      String label =
          String.format(
              Locale.ROOT, "%.0f mm³, %.0f mm²", r.caught().volumeMm3(), r.caught().areaMm2());
      spaces.add(new MoldPictures.Space(facets, r.center(), label));
    }
    MoldPictures.Piece whole =
        new MoldPictures.Piece("model", e.scaled(), e.survey().best().direction());
    new MoldPictures(
            e.scaled(), List.of(whole), List.of(), PictureOptions.DEFAULT.withThreads(threads))
        .spaces(spaces, file);
  }

  /** For looking at: what is free and what is caught as two bodies, in the frame of the mesh. */
  static void view(TriMesh mesh, CaughtPlaces caught, Path file) throws IOException {
    int[] free = facets(mesh, caught, false);
    int[] held = facets(mesh, caught, true);
    List<NamedMesh> bodies = new ArrayList<>();
    if (free.length > 0) {
      bodies.add(new NamedMesh("model", new TriMesh(mesh.xyz(), free), Colors.CASTING));
    }
    if (held.length > 0) {
      bodies.add(new NamedMesh("caught", new TriMesh(mesh.xyz(), held), Colors.CAUGHT));
    }
    GlbWriter.write(file, bodies);
  }

  private static int[] facets(TriMesh mesh, CaughtPlaces caught, boolean held) {
    int[] out = new int[mesh.tri().length];
    int n = 0;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      if (caught.caught(f) == held) {
        System.arraycopy(mesh.tri(), 3 * f, out, n, 3);
        n += 3;
      }
    }
    return java.util.Arrays.copyOf(out, n);
  }

  /** Draws the caught places of a model. */
  static void picture(TriMesh mesh, SurveyResult survey, Path file, int threads)
      throws IOException {
    MoldPictures.Piece whole = new MoldPictures.Piece("model", mesh, survey.best().direction());
    new MoldPictures(mesh, List.of(whole), List.of(), PictureOptions.DEFAULT.withThreads(threads))
        .caught(patches(survey.caught(), mesh.triangleCount()), null, file);
  }

  /** Facets by caught place, with a label that tells the size. */
  static List<MoldPictures.CaughtPatch> patches(CaughtPlaces caught, int facets) {
    List<CaughtPlace> places = caught.places();
    List<List<Integer>> members = new ArrayList<>();
    places.forEach(p -> members.add(new ArrayList<>()));
    for (int f = 0; f < facets; f++) {
      int at = caught.place(f);
      if (at >= 0 && at < places.size()) {
        members.get(at).add(f);
      }
    }
    List<MoldPictures.CaughtPatch> out = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      CaughtPlace p = places.get(i);
      int[] ids = members.get(i).stream().mapToInt(Integer::intValue).toArray();
      String label = String.format(Locale.ROOT, "%.0f mm², %.1f mm wide", p.area(), p.width());
      out.add(new MoldPictures.CaughtPatch(ids, label));
    }
    return out;
  }
}
