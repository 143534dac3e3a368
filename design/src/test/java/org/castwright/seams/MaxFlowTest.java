package org.castwright.seams;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.jgrapht.alg.flow.PushRelabelMFImpl;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleDirectedWeightedGraph;
import org.junit.jupiter.api.Test;

/** Against a general-purpose graph library (JGraphT, push-relabel). */
class MaxFlowTest {

  /** One random network, told to both. */
  private static final class Network {
    final int nodes;
    final long[][] capacity;

    /** Node count is the source, node count plus one the sink. */
    Network(SplittableRandom random) {
      nodes = random.nextInt(1, 40);
      capacity = new long[nodes + 2][nodes + 2];
      double density = random.nextDouble();
      int limit = random.nextBoolean() ? 4 : 1000;
      for (int u = 0; u < nodes; u++) {
        for (int v = 0; v < nodes; v++) {
          if (u != v && random.nextDouble() < density) {
            capacity[u][v] = random.nextInt(limit);
          }
        }
        if (random.nextInt(3) == 0) {
          capacity[nodes][u] = random.nextInt(limit);
        }
        if (random.nextInt(3) == 0) {
          capacity[u][nodes + 1] = random.nextInt(limit);
        }
      }
    }

    MaxFlow ours() {
      MaxFlow flow = new MaxFlow(nodes, 1);
      for (int u = 0; u < nodes; u++) {
        flow.terminals(u, capacity[nodes][u], capacity[u][nodes + 1]);
        for (int v = 0; v < u; v++) {
          if (capacity[u][v] + capacity[v][u] > 0) {
            flow.arc(u, v, capacity[u][v], capacity[v][u]);
          }
        }
      }
      return flow;
    }

    double theirs() {
      SimpleDirectedWeightedGraph<Integer, DefaultWeightedEdge> graph =
          new SimpleDirectedWeightedGraph<>(DefaultWeightedEdge.class);
      for (int u = 0; u < nodes + 2; u++) {
        graph.addVertex(u);
      }
      for (int u = 0; u < nodes + 2; u++) {
        for (int v = 0; v < nodes + 2; v++) {
          if (capacity[u][v] > 0) {
            graph.setEdgeWeight(graph.addEdge(u, v), (double) capacity[u][v]);
          }
        }
      }
      return new PushRelabelMFImpl<>(graph).getMaximumFlowValue(nodes, nodes + 1);
    }

    long cut(MaxFlow flow) {
      long sum = 0;
      for (int u = 0; u <= nodes; u++) {
        for (int v = 0; v < nodes + 2; v++) {
          boolean from = u == nodes || flow.sourceSide(u);
          boolean to = v == nodes || (v < nodes && flow.sourceSide(v));
          sum += from && !to ? capacity[u][v] : 0;
        }
      }
      return sum;
    }
  }

  @Test
  void theFlowIsThatOfTheLibraryAndTheCutIsWorthTheFlow() {
    SplittableRandom random = new SplittableRandom(20260101);
    long sum = 0;
    for (int i = 0; i < 1500; i++) {
      Network network = new Network(random);
      MaxFlow flow = network.ours();
      long value = flow.run();
      assertEquals(network.theirs(), (double) value, 0, "network " + i);
      assertEquals(value, network.cut(flow), "network " + i);
      sum += value;
    }
    assertTrue(sum > 0);
  }

  @Test
  void aLongGridIsCutAtItsWaist() {
    // 200 x 50 grid of capacity 7 edges with one column of capacity 2: 50 rows of 2, by inspection
    int nx = 200;
    int ny = 50;
    MaxFlow flow = new MaxFlow(nx * ny, 2 * nx * ny);
    for (int j = 0; j < ny; j++) {
      flow.terminals(j * nx, 100, 0);
      flow.terminals(j * nx + nx - 1, 0, 100);
      for (int i = 0; i < nx; i++) {
        if (i + 1 < nx) {
          int c = i == 120 ? 2 : 7;
          flow.arc(j * nx + i, j * nx + i + 1, c, c);
        }
        if (j + 1 < ny) {
          flow.arc(j * nx + i, (j + 1) * nx + i, 7, 7);
        }
      }
    }
    assertEquals(100, flow.run());
    assertTrue(flow.sourceSide(120));
    assertTrue(!flow.sourceSide(121));
  }
}
