package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.castwright.mesh.Shapes;
import org.castwright.pipeline.Report;
import org.castwright.plan.MoldOptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sizes a mold maker would expect on a table-top mold: common practice, no source. */
class TableTopTest {

  @TempDir private Path temp;

  @Test
  void plasterMoldOfAHandLongModel() throws IOException {
    try (Jobs jobs = new Jobs(temp)) {
      Jobs.Done done =
          jobs.run("pebble", Shapes.ellipsoid(50, 35, 22, 48), MoldOptions.DEFAULT.with());
      assertEquals(List.of(), done.failures());
      Report r = done.result().report();
      sizes(r);
      room(r);
    }
  }

  private static void sizes(Report r) {
    Report.ChannelInfo gate =
        r.channels().stream().filter(c -> c.kind().equals("gate")).findFirst().orElseThrow();
    between(5, 15, gate.boreMm(), "throat");
    between(10, 26, gate.mouthMm(), "funnel mouth");
    for (Report.ChannelInfo c : r.channels()) {
      if (c.kind().equals("vent")) {
        // plaster wants 3 to 5 mm
        between(3, 5, c.boreMm(), "vent");
      }
    }
    assertTrue(r.keys().size() >= 3, "three keys fix a piece");
    for (Report.KeyInfo k : r.keys()) {
      between(6, 12, k.diameterMm(), "key");
      between(0.4 * k.diameterMm(), 0.6 * k.diameterMm(), k.heightMm(), "key height");
      between(10, 30, k.draftDeg(), "key draft");
      // tight below 0.2 mm, loose above 0.4 mm on filament prints
      between(0.2, 0.4, k.clearanceMm(), "key gap");
    }
  }

  private static void room(Report r) {
    between(3, 8, r.block().wallMm(), "wall");
    double cavity = r.casting().volumeMm3();
    // an ellipsoid fills π/6 of its box; with walls and a rim for keys round it, eight times is
    // ample
    between(1, 8, r.block().volumeMm3() / cavity, "block to casting");
    // gate and vents waste less material than the casting takes
    between(0, 1, r.volumes().channelsMm3() / cavity, "channels to casting");
  }

  private static void between(double low, double high, double value, String what) {
    assertTrue(value >= low && value <= high, what + " " + value + " not " + low + " to " + high);
  }
}
