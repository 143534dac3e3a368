package org.castwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;
import org.junit.jupiter.api.Test;

/**
 * Two rigid pieces open along a line exactly when every column along it is one run of solid (Ahn,
 * de Berg, Bose, Cheng, Halperin, Matousek, Schwarzkopf, "Separating an object from its cast", CAD
 * 34(8), 2002), that is when the trapped volume is zero.
 */
class OpeningTheoremTest {

  private static final Vec3[] AXES = {Vec3.X, Vec3.Y, Vec3.Z};
  private static final long SEED = 20_020;

  @Test
  void trappedVolumeIsZeroExactlyWhenTwoPiecesSlideOff() {
    SplittableRandom random = new SplittableRandom(SEED);
    DepthImage image = new DepthImage();
    int opening = 0;
    int caught = 0;
    for (int trial = 0; trial < 150; trial++) {
      VoxelShape shape = VoxelShape.grown(4, 4 + random.nextInt(28), random);
      TriMesh mesh = shape.mesh();
      for (int axis = 0; axis < 3; axis++) {
        image.look(mesh, Frame.along(AXES[axis]), 64, 0);
        double trapped = image.trappedVolume();
        String what = "seed " + SEED + " trial " + trial + " axis " + axis;
        assertEquals(shape.opens(axis), trapped == 0, what);
        // a shut-in cell is 1 mm³; columns 1/64 of the side apart count it to within 1/16 each way
        assertEquals(shape.shutIn(axis), trapped, 0.15 * shape.shutIn(axis), what);
        opening += trapped == 0 ? 1 : 0;
        caught += trapped == 0 ? 0 : 1;
      }
    }
    assertTrue(opening > 50 && caught > 50, opening + " open, " + caught + " do not");
  }

  @Test
  void freeAgreesWithSlidingOff() {
    SplittableRandom random = new SplittableRandom(SEED + 1);
    SurveyOptions options = SurveyOptions.DEFAULT;
    for (int trial = 0; trial < 12; trial++) {
      VoxelShape shape = VoxelShape.grown(4, 4 + random.nextInt(28), random);
      for (int axis = 0; axis < 3; axis++) {
        Opening o = Survey.along(shape.mesh(), AXES[axis], options, Progress.NONE).best();
        assertEquals(shape.opens(axis), o.free(), "trial " + trial + " axis " + axis);
      }
    }
  }
}
