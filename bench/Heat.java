import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Locale;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.heat.HeatOptions;
import org.castwright.heat.HeatResult;
import org.castwright.heat.HeatStudy;
import org.castwright.heat.MoldWall;
import org.castwright.heat.Poured;
import org.castwright.heat.ThermalTable;
import org.castwright.mesh.TriMesh;
import org.castwright.pipeline.Model;
import org.castwright.pipeline.ModelOptions;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.solid.manifold.ManifoldKernel;

/**
 * Cools or cures one model in a box of 6 mm walls, once: {@code Heat FILE SIZE MATERIAL WALL CELLS
 * AIR} prints a row of a Markdown table up to the seconds it took, on the
 * clock and of processors.
 */
public final class Heat {

  private static final double WALL_MM = 6;
  private static final double NS = 1e-9;
  private static final double HOUR_S = 3600;

  private Heat() {}

  public static void main(String[] args) throws Exception {
    TriMesh mesh;
    try (SolidKernel kernel = new ManifoldKernel()) {
      ModelOptions options = ModelOptions.DEFAULT.withSizeMm(Double.parseDouble(args[1]));
      mesh = Model.read(Path.of(args[0]), options, kernel, Progress.NONE).mesh();
    }
    Box3 box = mesh.bounds();
    Vec3 wall = new Vec3(WALL_MM, WALL_MM, WALL_MM);
    HeatOptions options =
        HeatOptions.FINE
            .withCells(Integer.parseInt(args[4]))
            .inAirOf(Double.parseDouble(args[5]));
    OperatingSystemMXBean system =
        ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
    long cpu = system.getProcessCpuTime();
    long begin = System.nanoTime();
    HeatResult r =
        HeatStudy.of(
            Poured.alone(mesh),
            new Box3(box.min().minus(wall), box.max().plus(wall)),
            ThermalTable.casting(args[2]),
            MoldWall.full(ThermalTable.mold(args[3])),
            options,
            Progress.NONE);
    double took = (System.nanoTime() - begin) * NS;
    double worked = (system.getProcessCpuTime() - cpu) * NS;
    System.out.printf(
        Locale.ROOT,
        "| %s in %s, %s °C | %d | %.2f | %s | %s to %s | %.0f | %.0f | %d | %d | %.1f | %.1f |",
        args[2],
        args[3],
        args[5],
        r.cells(),
        r.cellMm(),
        hours(r.demoldS()),
        hours(r.demoldFromS()),
        hours(r.demoldToS()),
        r.peakC(),
        r.wall().peakC(),
        r.steps(),
        r.sweeps(),
        took,
        worked);
  }

  private static String hours(Double s) {
    return s == null ? "never" : String.format(Locale.ROOT, "%.2f", s / HOUR_S);
  }
}
