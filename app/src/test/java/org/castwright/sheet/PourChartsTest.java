package org.castwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class PourChartsTest {

  @Test
  void volumesArePercentsOfTheLast() {
    assertEquals(List.of(0.0, 25.0, 100.0), PourCharts.percent(List.of(0.0, 50.0, 200.0)));
  }

  @Test
  void whereAllRunsOutNothingIsFilled() {
    assertEquals(List.of(0.0, 0.0), PourCharts.percent(List.of(0.0, 0.0)));
  }
}
