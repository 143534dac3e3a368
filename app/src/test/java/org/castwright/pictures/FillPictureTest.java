package org.castwright.pictures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.Shapes;
import org.castwright.mesh.TriMesh;
import org.junit.jupiter.api.Test;

class FillPictureTest {

  private static final View FACE_ON = View.parallel(Vec3.Z.negate(), Vec3.Y);
  private static final PictureOptions SMALL = PictureOptions.DEFAULT.sized(400, 300);

  /** Cividis runs from dark blue to yellow: what is filled late is brighter than what is early. */
  @Test
  void whatIsReachedLaterIsBrighter() {
    BufferedImage p = draw(List.of(0.0, 50.0, 100.0));
    int low = p.getRGB(200, 190) & 0xffffff;
    int high = p.getRGB(200, 90) & 0xffffff;
    assertTrue(Rgb.red(high) > Rgb.red(low) + 50, Rgb.red(low) + " and " + Rgb.red(high));
  }

  /** A channel that opens below the casting lets all liquid out; the job must not end for that. */
  @Test
  void whatIsNeverReachedHasOneColorOfItsOwn() {
    BufferedImage p = draw(List.of(0.0, 0.0, 0.0));
    int low = p.getRGB(200, 190) & 0xffffff;
    assertEquals(low, p.getRGB(200, 90) & 0xffffff);
    assertTrue(Rgb.red(low) > 2 * Rgb.blue(low), "no vermilion: " + Integer.toHexString(low));
  }

  private static BufferedImage draw(List<Double> value) {
    FillPicture.Course course =
        new FillPicture.Course("% poured", List.of(-10.0, 0.0, 10.0), value);
    TriMesh none = new TriMesh(new double[0], new int[0]);
    return FillPicture.draw(Shapes.cube(20), none, Vec3.Y, course, List.of(), FACE_ON, SMALL);
  }
}
