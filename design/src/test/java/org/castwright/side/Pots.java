package org.castwright.side;

import java.util.ArrayList;
import java.util.List;
import org.castwright.mesh.FloatGrid;
import org.castwright.mesh.MeshBuilder;
import org.castwright.mesh.Primitives;
import org.castwright.mesh.TriMesh;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;

/** Hollow ware with handles, as a pottery casts it: bodies of revolution about z. */
public final class Pots {

  private static final int SIDES = 96;

  private Pots() {}

  /** A mug 54 mm wide with walls that lean by 0.7°, 3 mm thick, and one handle. */
  public static TriMesh mug(SolidKernel kernel) {
    double[] outside = {0, 0, 24, 0, 27, 5, 27, 60, 0, 60};
    double[] inside = {0, 4, 20, 4, 23.3, 8, 24, 62, 0, 62};
    return hollow(kernel, outside, inside, List.of(handle(27, 31, 17, 1.1, 4.5)));
  }

  /** A vase 60 mm wide and 94 high with a wide mouth, hollow, and two handles. */
  public static TriMesh amphora(SolidKernel kernel) {
    double[] outside = {0, 0, 14, 0, 16, 3, 24, 20, 30, 45, 28, 60, 22, 74, 20, 82, 24, 94, 0, 94};
    double[] inside = {0, 40, 12, 42, 13, 46, 15.5, 74, 16.5, 84, 19, 96, 0, 96};
    return hollow(
        kernel,
        outside,
        inside,
        List.of(handle(27, 62, 13, 1.3, 3.5), handle(-27, 62, 13, 1.3, 3.5)));
  }

  private static TriMesh hollow(
      SolidKernel kernel, double[] outside, double[] inside, List<TriMesh> handles) {
    List<Solid> full = new ArrayList<>();
    full.add(kernel.solid("outside", Primitives.revolve(outside, SIDES)));
    handles.forEach(h -> full.add(kernel.solid("handle", h)));
    Solid hollow = kernel.solid("inside", Primitives.revolve(inside, SIDES));
    Solid both = kernel.union("pot", full);
    return FloatGrid.snap(kernel.difference("pot", both, List.of(hollow)).mesh());
  }

  /**
   * A ring in the plane of x and z about (x, 0, z).
   *
   * @param radius of its middle line, mm, times tall along z
   * @param thick half its thickness in that plane; across it 5 mm
   */
  private static TriMesh handle(double x, double z, double radius, double tall, double thick) {
    MeshBuilder ring = new MeshBuilder();
    int around = 48;
    int across = 24;
    for (int i = 0; i < around; i++) {
      double a = 2 * Math.PI * i / around;
      for (int j = 0; j < across; j++) {
        double b = 2 * Math.PI * j / across;
        double q = radius + thick * Math.cos(b);
        ring.vertex(x + q * Math.cos(a), 5 * Math.sin(b), z + tall * q * Math.sin(a));
      }
    }
    for (int i = 0; i < around; i++) {
      for (int j = 0; j < across; j++) {
        int next = (i + 1) % around;
        int beside = (j + 1) % across;
        ring.triangle(i * across + j, next * across + beside, next * across + j);
        ring.triangle(i * across + j, i * across + beside, next * across + beside);
      }
    }
    return ring.build();
  }
}
