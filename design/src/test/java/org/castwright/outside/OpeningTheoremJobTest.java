package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.CaughtException;
import org.castwright.progress.Progress;
import org.castwright.survey.Survey;
import org.castwright.survey.SurveyOptions;
import org.junit.jupiter.api.Test;

/**
 * Two rigid pieces open along a line exactly when every line in that direction meets the object in
 * one run (Ahn, de Berg, Bose, Cheng, Halperin, Matoušek, Schwarzkopf, "Separating an object from
 * its cast", Computer-Aided Design 34(8), 2002), from the survey to the proof.
 */
class OpeningTheoremJobTest {

  private static final long SEED = 34_8;
  private static final int SHAPES = 40;
  private static final int JOBS = 4;

  /** Cells of 10 mm: 40 mm across. */
  private static final double CELL = 10;

  private static boolean free(TriMesh mesh) {
    return Survey.along(mesh, Vec3.Z, SurveyOptions.DEFAULT, Progress.NONE).best().free();
  }

  @Test
  void opensExactlyWhenEveryColumnIsOneRun() {
    SplittableRandom random = new SplittableRandom(SEED);
    List<TriMesh> open = new ArrayList<>();
    List<TriMesh> caught = new ArrayList<>();
    // most shapes open, so they are drawn until there are as many of one kind as of the other
    while (open.size() + caught.size() < SHAPES) {
      Blocks blocks = Blocks.grown(random);
      List<TriMesh> kind = blocks.everyColumnIsOneRun() ? open : caught;
      if (kind.size() < SHAPES / 2) {
        kind.add(blocks.mesh(CELL));
      }
    }
    for (int i = 0; i < SHAPES / 2; i++) {
      assertTrue(free(open.get(i)), "seed " + SEED + " open shape " + i);
      assertFalse(free(caught.get(i)), "seed " + SEED + " caught shape " + i);
    }
    // the most rugged of those that open
    open.sort(Comparator.comparingInt(TriMesh::triangleCount).reversed());
    for (int i = 0; i < JOBS; i++) {
      Workshop.along(open.get(i), Vec3.Z).assertProved();
      TriMesh mesh = caught.get(i);
      assertThrows(CaughtException.class, () -> Workshop.along(mesh, Vec3.Z));
    }
  }
}
