package org.castwright.side;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import org.castwright.geom.Box3;
import org.castwright.geom.Frame;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.parting.BlockBox;
import org.castwright.parting.PartingOptions;
import org.castwright.parting.TopSheet;
import org.castwright.progress.Progress;
import org.castwright.solid.Solid;
import org.castwright.solid.SolidKernel;
import org.castwright.survey.TrappedSpace;

/** Cuts plugs one after the other: each from what the casting and earlier plugs leave. */
final class PlugCutter {

  /** A body of a plug that holds less is left to the main pieces, mm³. */
  private static final double LEAST_BODY = 1;

  /** Pockets closer than this across the pull share a plug, mm. */
  static final double SHARED = 3;

  private final TriMesh casting;
  private final Solid body;
  private final Solid block;
  private final PartingOptions options;
  private final SolidKernel kernel;
  private final Progress progress;
  private final List<Solid> taken = new ArrayList<>();

  PlugCutter(
      TriMesh casting,
      BlockBox box,
      PartingOptions options,
      SolidKernel kernel,
      Progress progress) {
    this.casting = casting;
    this.options = options;
    this.kernel = kernel;
    this.progress = progress;
    body = kernel.solid("casting", casting);
    block = kernel.solid("block", box.mesh());
    taken.add(body);
  }

  /** Cuts plugs round the points of a choice; what {@code keep} refuses stays as it was. */
  void cut(SidePulls.Choice choice, TrappedSpace space, Predicate<Solid> keep) {
    Frame frame = Frame.along(choice.pull());
    TriMesh turned = rounded(casting.toLocal(frame));
    double[] points = space.points(choice.points(), frame);
    BlockBox room = BlockBox.around(block.mesh().toLocal(frame).bounds(), 2, 2);
    List<Footprint> plugs = Footprint.of(points, SHARED);
    double lowest = plugs.stream().mapToDouble(Footprint::floor).min().orElse(0);
    double wall = Math.max(room.z0() + 1, Math.min(room.z1() - 1, lowest));
    TriMesh slab =
        TopSheet.slab(turned, room, wall, new Floors(points, space.cell()), options, progress);
    Solid above = kernel.solid("space free along a side pull", inWorld(slab, frame));
    for (Footprint plug : plugs) {
      String name = "side piece " + taken.size();
      Solid whole = kernel.solid(name + " plug", inWorld(plug.body(room.z1()), frame));
      Solid inBlock = kernel.intersection(name, whole, block);
      Solid free = kernel.intersection(name, inBlock, above);
      for (Solid part : kernel.decompose(kernel.difference(name, free, taken))) {
        if (part.volume() >= LEAST_BODY && keep.test(part)) {
          taken.add(part);
        }
      }
    }
  }

  private static TriMesh rounded(TriMesh mesh) {
    double[] out = new double[mesh.xyz().length];
    for (int i = 0; i < out.length; i++) {
      out[i] = (float) mesh.xyz()[i];
    }
    return new TriMesh(out, mesh.tri());
  }

  private static TriMesh inWorld(TriMesh local, Frame frame) {
    double[] v = local.xyz();
    double[] out = new double[v.length];
    for (int i = 0; i < v.length; i += 3) {
      Vec3 p = frame.toWorld(new Vec3(v[i], v[i + 1], v[i + 2]));
      out[i] = p.x();
      out[i + 1] = p.y();
      out[i + 2] = p.z();
    }
    return new TriMesh(out, local.tri());
  }

  /** The lowest point to be freed over each place, less the plug's margin. */
  private static final class Floors implements TopSheet.Need {
    private final double cell;
    private final double x0;
    private final double y0;
    private final int nx;
    private final int ny;
    private final double[] low;

    Floors(double[] points, double cell) {
      this.cell = cell;
      Box3 b = Box3.of(points);
      x0 = b.min().x() - 2 * cell;
      y0 = b.min().y() - 2 * cell;
      nx = (int) ((b.max().x() - x0) / cell) + 3;
      ny = (int) ((b.max().y() - y0) / cell) + 3;
      low = new double[nx * ny];
      Arrays.fill(low, Double.MAX_VALUE);
      for (int i = 0; i < points.length; i += 3) {
        int ci = (int) ((points[i] - x0) / cell);
        int cj = (int) ((points[i + 1] - y0) / cell);
        for (int j = cj - 1; j <= cj + 1; j++) {
          for (int k = ci - 1; k <= ci + 1; k++) {
            low[j * nx + k] = Math.min(low[j * nx + k], points[i + 2]);
          }
        }
      }
    }

    @Override
    public double from(double x, double y) {
      int i = (int) Math.floor((x - x0) / cell);
      int j = (int) Math.floor((y - y0) / cell);
      if (i < 0 || j < 0 || i >= nx || j >= ny || low[j * nx + i] == Double.MAX_VALUE) {
        return Double.MAX_VALUE;
      }
      return low[j * nx + i] - Footprint.MARGIN;
    }
  }
}
