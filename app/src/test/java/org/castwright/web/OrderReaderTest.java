package org.castwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.pipeline.JobOptions;
import org.castwright.plan.GateEnd;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.PiecePull;
import org.castwright.seams.Mark;
import org.junit.jupiter.api.Test;

class OrderReaderTest {

  @Test
  void whatIsNotSaidIsByRule() {
    JobOptions o = read("");
    MoldOptions usual = MoldOptions.DEFAULT;
    assertEquals(usual.leaveMm3(), o.mold().leaveMm3());
    assertEquals(usual.blockOutMm3(), o.mold().blockOutMm3());
    assertEquals(JobOptions.DEFAULT.wedgeDeg(), o.wedgeDeg());
    assertTrue(o.mold().wishes().all().isEmpty());
    assertTrue(o.mold().pulls().isEmpty());
  }

  @Test
  void tolerancesAndHealingAreTaken() {
    JobOptions o =
        read(
            """
            , "leave_mm3": 8, "block_out_mm3": 120, "wedge_deg": 20, "mold_strain_percent": 40, "heal": "remesh",
            "remesh_cell_mm": 0.5, "fill_voids": true, "shrink_percent": [1, 2, 3],
            "gate_end": "bottom\"""");
    assertEquals(GateEnd.BOTTOM, o.mold().openings().gate());
    assertEquals(8, o.mold().leaveMm3());
    assertEquals(120, o.mold().blockOutMm3());
    assertEquals(20, o.wedgeDeg());
    assertEquals(0.4, o.mold().moldStrain(), 1e-12);
    assertEquals(0.5, o.model().repair().remeshCell());
    assertTrue(o.model().repair().fillVoids());
    assertEquals(new Vec3(1, 2, 3), o.mold().shrinkPercent());
  }

  @Test
  void pullsAndWishesAreTaken() {
    JobOptions o =
        read(
            """
            , "pieces": 3, "pulls": [{"piece": 2, "direction": [0, 0, 1]}], "wishes": {"version": 1,
            "wishes": [{"mark": "no-seam", "sphere": {"center": [1, 2, 3], "radius": 4}}]}""");
    assertEquals(List.of(new PiecePull(2, new Vec3(0, 0, 1))), o.mold().pulls());
    assertEquals(1, o.mold().wishes().all().size());
    assertEquals(Mark.NO_SEAM, o.mold().wishes().all().get(0).mark());
  }

  @Test
  void whatCannotBeIsRefusedInOneSentence() {
    for (String wrong :
        List.of(
            ", \"pulls\": [{\"piece\": 9, \"direction\": [0, 0, 1]}]",
            ", \"pulls\": 3",
            ", \"pulls\": [{\"piece\": 1}]",
            ", \"wishes\": {\"version\": 1, \"wishes\": [{\"mark\": \"cut\"}]}",
            ", \"wedge_deg\": 100",
            ", \"block_out_mm3\": -2",
            ", \"block_out_mm3\": \"some\"",
            ", \"leave_mm3\": -1")) {
      Refused e = assertThrows(Refused.class, () -> read(wrong), wrong);
      assertEquals(400, e.status(), wrong);
      assertEquals(1, e.getMessage().lines().count(), e.getMessage());
    }
  }

  private static JobOptions read(String more) {
    return OrderReader.read("{\"model\": \"bird.stl\"" + more + "}", 2).options();
  }
}
