package org.castwright.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshCheck;
import org.castwright.mesh.TriMesh;
import org.castwright.plan.Channel.Station;
import org.junit.jupiter.api.Test;

class ChannelBodyTest {

  private static Channel channel(Channel.Course course, List<Station> s) {
    Vec3 in = s.get(0).center();
    Vec3 out = s.get(s.size() - 1).center();
    return new Channel("c", Channel.Kind.VENT, course, s, in, out, 4, 4);
  }

  @Test
  void straightBoreHasItsClosedFormVolume() {
    List<Station> s =
        List.of(
            new Station(new Vec3(1, 0, 2), 2, 0.5),
            new Station(new Vec3(1, 10, 2), 2, 0.5),
            new Station(new Vec3(1, 30, 2), 2, 0.5));
    List<TriMesh> bodies = ChannelBody.of(channel(Channel.Course.SEAM, s));
    assertEquals(2, bodies.size(), "a rounded start and the bore");
    assertTrue(MeshCheck.of(bodies.get(0)).closedManifold());
    assertTrue(MeshCheck.of(bodies.get(1)).closedManifold());
    // a 24-gon of radius 2 and a flank 4 wide, 1 high, over 30 mm; area of the unit 24-gon 12 sin
    // 15°
    double area = 4 * 12 * Math.sin(Math.toRadians(15)) + 4;
    assertEquals(30 * area, bodies.get(1).volume(), 1e-9);
    assertEquals(-2, bodies.get(0).bounds().min().y(), 1e-9, "half a bore behind the start");
  }

  @Test
  void bendsAreRoundedByPosts() {
    List<Station> s =
        List.of(
            new Station(new Vec3(0, 0, 0), 2, 0.2),
            new Station(new Vec3(0, 10, 1), 2, 0.2),
            new Station(new Vec3(10, 12, 2), 2, 0.2));
    List<TriMesh> bodies = ChannelBody.of(channel(Channel.Course.SEAM, s));
    assertEquals(4, bodies.size(), "start, run, bend, run");
    for (TriMesh m : bodies) {
      assertTrue(MeshCheck.of(m).closedManifold());
      assertTrue(m.volume() > 0);
    }
  }

  @Test
  void boreAlongThePullIsAFrustum() {
    List<Station> s =
        List.of(new Station(new Vec3(3, 4, 0), 3, 0), new Station(new Vec3(3, 4, 20), 2, 0));
    TriMesh m = ChannelBody.of(channel(Channel.Course.PULL, s)).get(0);
    // frustum of a 48-gon: h/3 (A1 + A2 + sqrt(A1 A2)), unit area 24 sin 7.5°
    double unit = 24 * Math.sin(Math.toRadians(7.5));
    assertEquals(20 / 3.0 * unit * (9 + 4 + 6), m.volume(), 1e-9);
    assertEquals(3, m.bounds().center().x(), 1e-9);
  }
}
