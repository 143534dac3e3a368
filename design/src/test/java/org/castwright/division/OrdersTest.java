package org.castwright.division;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Orders of leaving with some pieces at their places, and what they cost. */
class OrdersTest {

  private static Set<String> tried(Integer... places) {
    Set<String> out = new HashSet<>();
    for (int[] order : Orders.of(List.of(places))) {
      assertEquals(places.length, Arrays.stream(order).distinct().count());
      for (int i = 0; i < places.length; i++) {
        assertTrue(places[i] < 0 || order[places[i]] == i, Arrays.toString(order));
      }
      assertTrue(out.add(Arrays.toString(order)), "each order once");
    }
    return out;
  }

  @Test
  void allOrdersWhereNothingIsAsked() {
    assertEquals(24, tried(-1, -1, -1, -1).size());
    assertEquals(120, tried(-1, -1, -1, -1, -1).size());
    assertEquals(7, tried(-1, -1, -1, -1, -1, -1, -1).size(), "turns of one");
  }

  @Test
  void piecesStayAtTheirPlaces() {
    assertEquals(Set.of("[1, 2, 0]"), tried(2, 0, 1));
    assertEquals(Set.of("[1, 0, 2]", "[2, 0, 1]"), tried(1, -1, -1));
    assertEquals(120, tried(-1, -1, 0, -1, -1, 7, -1, 4).size());
  }

  private static final byte[] WANTED = {-1, 0, 0, 1, 1, 1, 2, 2};

  private static byte[] many(byte[] few, int times) {
    byte[] out = new byte[few.length * times];
    for (int i = 0; i < out.length; i++) {
      out[i] = few[i / times];
    }
    return out;
  }

  @Test
  void whatPiecesTakeFromEachOtherIsTold() {
    byte[] taken = {-1, 1, 0, 1, 1, 1, 1, 2};
    Taken t = new Taken(many(WANTED, 50), many(taken, 50), new int[] {1, 0, 2}, 0.5);
    t.check(many(taken, 50));
    assertEquals(
        List.of(
            "In the order asked for, of the 50 mm³ that piece 2 would have piece 1 takes 25 mm³.",
            "In the order asked for, of the 50 mm³ that piece 3 would have piece 1 takes 25 mm³."),
        t.words());
  }

  @Test
  void anOrderThatLeavesNothingForAPieceIsRefusedWithWhoTakesIt() {
    byte[] taken = {-1, 0, 0, 1, 1, 1, 1, 0};
    Taken t = new Taken(many(WANTED, 50), many(taken, 50), new int[] {1, 0, 2}, 2);
    OrderException e = assertThrows(OrderException.class, () -> t.check(many(taken, 50)));
    assertEquals(
        "in this order nothing is left for piece 3: of the 200 mm³ that it would have piece 1 takes"
            + " 100 mm³, piece 2 takes 100 mm³; fix fewer pulls, or another order",
        e.getMessage());
  }
}
