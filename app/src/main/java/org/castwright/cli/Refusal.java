package org.castwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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

  private Refusal() {}

  static void write(CaughtException e, Path output, int threads) throws IOException {
    RefusalFolder.write(
        e,
        output,
        dir -> {
          picture(e.scaled(), e.survey(), dir.resolve(PICTURE), threads);
          view(e.scaled(), e.survey().caught(), dir.resolve(VIEW));
        });
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
        .caught(patches(survey.caught(), mesh.triangleCount()), file);
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
