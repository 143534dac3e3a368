package org.castwright.proof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.castwright.geom.Vec3;
import org.junit.jupiter.api.Test;

/** What failed checks ask for, gathered by piece. */
class MendTest {

  private static ProofCheck failed(String name) {
    return new ProofCheck(name, false, 1, 0, "mm", name + " fails");
  }

  private static final ProofCheck WEDGE =
      failed("wedge").curedAt(ProofCheck.Cure.EDGES, "piece-1", List.of(Vec3.X, Vec3.Y));
  private static final ProofCheck WEB =
      failed("web").curedAt(ProofCheck.Cure.WEBS, "piece-2", List.of(Vec3.Z));
  private static final ProofCheck CAUGHT = failed("opening").curedBy("piece-2");

  @Test
  void gathersByPiece() {
    Mend m = Mend.of(List.of(WEDGE, WEB, CAUGHT, CAUGHT));
    assertEquals(List.of(Vec3.X, Vec3.Y), m.edges().get("piece-1"));
    assertEquals(List.of(Vec3.Z), m.webs().get("piece-2"));
    assertEquals(Set.of("piece-2"), m.caught().keySet());
  }

  @Test
  void nothingWhereAnotherCheckFailsToo() {
    assertTrue(Mend.of(List.of(WEDGE, failed("one part"))).isEmpty());
    assertTrue(Mend.of(List.of()).isEmpty());
  }

  @Test
  void addsUp() {
    Mend m = Mend.of(List.of(WEDGE)).and(Mend.of(List.of(WEDGE, CAUGHT)));
    assertEquals(4, m.edges().get("piece-1").size());
    assertEquals(1, m.caught().size());
  }
}
