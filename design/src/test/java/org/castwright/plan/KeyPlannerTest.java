package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Box3;
import org.castwright.geom.Vec3;
import org.castwright.material.Materials;
import org.castwright.parting.BlockBox;
import org.junit.jupiter.api.Test;

class KeyPlannerTest {

  private static final BlockBox BOX = new BlockBox(-60, -60, 60, 60, -30, 30);

  /** A disc of radius 40 in a square block: free corners, four-fold symmetric. */
  private static Ground disc(double slopeBeyondX) {
    return new Ground() {
      @Override
      public double heightAt(double x, double y) {
        return Math.hypot(x, y) < 40 ? Double.NaN : x > 0 ? slopeBeyondX * x : 0;
      }

      @Override
      public double roofAt(double x, double y) {
        return Double.NaN;
      }

      @Override
      public double undersideAt(double x, double y) {
        return roofAt(x, y);
      }

      @Override
      public double shadowDistance(double x, double y) {
        return Math.max(0, Math.hypot(x, y) - 40);
      }
    };
  }

  private static KeyPlanner planner(Ground ground) {
    Room room = new Room(ground, Outline.rectangle(-60, -60, 60, 60));
    Box3 casting = new Box3(new Vec3(-40, -40, -20), new Vec3(40, 40, 20));
    return new KeyPlanner(
        room, BOX, Sizes.of(casting, Materials.of("plaster-pottery"), MoldOptions.DEFAULT));
  }

  @Test
  void fourKeysInTheCornersOneOffThePattern() {
    KeyPlanner p = planner(disc(0));
    List<Key> keys = p.place(4, KeyShape.CONE, 0.3);
    assertEquals(4, keys.size());
    List<double[]> at =
        keys.stream().map(k -> new double[] {k.center().x(), k.center().y()}).toList();
    assertTrue(p.turnedMismatch(at) >= KeyPlanner.OFF_PATTERN);
    for (Key k : keys) {
      double r = k.radius() + k.clearance();
      assertTrue(Math.hypot(k.center().x(), k.center().y()) - 40 >= r + 3 - 1e-9);
      assertTrue(60 - Math.abs(k.center().x()) >= r + 3 - 1e-6);
    }
  }

  @Test
  void keysShunSlopingGround() {
    List<Key> keys = planner(disc(0.5)).place(3, KeyShape.DOME, 0.2);
    assertTrue(keys.size() >= 3);
    for (Key k : keys) {
      assertTrue(k.center().x() <= k.radius(), "a key on a slope of 27 degrees: " + k);
    }
  }

  @Test
  void noneWhereThereIsNoRoom() {
    Ground full =
        new Ground() {
          @Override
          public double heightAt(double x, double y) {
            return 0;
          }

          @Override
          public double roofAt(double x, double y) {
            return 0;
          }

          @Override
          public double undersideAt(double x, double y) {
            return roofAt(x, y);
          }

          @Override
          public double shadowDistance(double x, double y) {
            return 0;
          }
        };
    assertEquals(0, planner(full).place(4, KeyShape.CONE, 0.3).size());
  }
}
