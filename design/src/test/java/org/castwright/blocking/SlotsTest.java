package org.castwright.blocking;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Narrow slots are filled, wide ones and plain slopes stay as they are. */
class SlotsTest {

  private static final int N = 60;

  /** A plate with a slot along a row, some places wide. */
  private static float[] slot(int wide) {
    float[] v = new float[N * N];
    Arrays.fill(v, 10);
    Arrays.fill(v, 30 * N, (30 + wide) * N, 0);
    return v;
  }

  @Test
  void aNarrowSlotIsFilledAndAWideOneStays() {
    Slots slots = new Slots(N, 3, 0.1);
    float[] narrow = slots.filled(slot(3));
    for (int o = 0; o < narrow.length; o++) {
      assertEquals(10, narrow[o], 0.31, "all is about as high as the plate");
    }
    float[] wide = slots.filled(slot(9));
    assertEquals(0, wide[34 * N + N / 2], 0, "its middle stays open");
    assertEquals(0, wide[30 * N + N / 2], 0, "and the foot of its walls too");
  }

  @Test
  void aPlainSlopeAndABluntRidgeStay() {
    float[] slope = new float[N * N];
    float[] ridge = new float[N * N];
    for (int o = 0; o < slope.length; o++) {
      slope[o] = 0.05f * (o % N);
      ridge[o] = -0.05f * Math.abs(o % N - N / 2);
    }
    Slots slots = new Slots(N, 3, 0.1);
    assertArrayEquals(slope, slots.filled(slope), 1e-5f);
    assertArrayEquals(ridge, slots.leveled(ridge), 1e-5f);
  }

  /** On any surface: never below it, twice no more than once, ridges are slots upside down. */
  @Test
  void fillingIsAClosing() {
    SplittableRandom random = new SplittableRandom(77);
    for (int n = 0; n < 10; n++) {
      Slots slots = new Slots(N, 1 + 3 * random.nextDouble(), random.nextDouble());
      float[] v = new float[N * N];
      float[] below = new float[v.length];
      for (int o = 0; o < v.length; o++) {
        v[o] = (float) (8 * random.nextDouble());
        below[o] = -v[o];
      }
      float[] once = slots.filled(v);
      float[] leveled = slots.leveled(below);
      float[] twice = slots.filled(once);
      for (int o = 0; o < v.length; o++) {
        assertTrue(once[o] >= v[o] - 1e-5);
        assertEquals(-once[o], leveled[o], 0);
        assertEquals(once[o], twice[o], 1e-5);
      }
    }
  }
}
