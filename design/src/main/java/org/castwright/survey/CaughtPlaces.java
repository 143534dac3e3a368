package org.castwright.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.TriMesh;
import org.castwright.progress.Progress;

/**
 * Where two rigid pieces would hold a model fast: a mark on each facet that neither side of the
 * pull sees, and the marked facets gathered into patches. Catches no wider or no deeper than the
 * release tolerance are left out, so a model that opens has no places.
 */
public final class CaughtPlaces {

  // a facet less than half hidden still counts when it hides this much, mm²
  private static final double NOTABLE_AREA = 0.25;
  // patches under this share of all caught area, or under the area above, are specks
  private static final double SPECK_SHARE = 0.005;
  // a speck joins the nearest place within this share of the model's diagonal
  private static final double JOIN_SHARE = 0.05;

  private final Vec3 direction;
  private final int[] place;
  private final float[] depth;
  private final List<CaughtPlace> places;
  private final double area;
  private final double speckArea;

  private CaughtPlaces(
      Vec3 direction,
      int[] place,
      float[] depth,
      List<CaughtPlace> places,
      double area,
      double speckArea) {
    this.direction = direction;
    this.place = place;
    this.depth = depth;
    this.places = Collections.unmodifiableList(places);
    this.area = area;
    this.speckArea = speckArea;
  }

  /**
   * Looks along one direction.
   *
   * @param mesh closed, outward-oriented, mm
   * @param direction the pull
   * @throws org.castwright.mesh.MeshException if the mesh is not closed
   */
  public static CaughtPlaces of(
      TriMesh mesh, Vec3 direction, SurveyOptions options, Progress progress) {
    return Survey.along(mesh, direction, options, progress).caught();
  }

  static CaughtPlaces none(Vec3 direction, int facets) {
    int[] place = new int[facets];
    Arrays.fill(place, -1);
    return new CaughtPlaces(direction, place, new float[facets], List.of(), 0, 0);
  }

  static CaughtPlaces from(TriMesh mesh, FacetTable facets, FacetHits hits, Vec3 direction) {
    double total = 0;
    int[] patch = new int[facets.count()];
    float[] depth = new float[facets.count()];
    for (int f = 0; f < patch.length; f++) {
      double hidden = hits.share(f) * facets.area(f);
      total += hidden;
      patch[f] = hits.share(f) >= 0.5 || hidden >= NOTABLE_AREA ? 0 : -1;
      depth[f] = patch[f] == 0 ? (float) hits.depth(f) : 0;
    }
    int count = gather(mesh, patch);
    Patch[] patches = new Patch[count];
    Arrays.setAll(patches, k -> new Patch());
    for (int f = 0; f < patch.length; f++) {
      if (patch[f] >= 0) {
        patches[patch[f]].add(mesh, f, hits.share(f) * facets.area(f), hits);
      }
    }
    double speck = Math.max(NOTABLE_AREA, SPECK_SHARE * total);
    double left =
        mergeSpecks(patches, order(patches), speck, JOIN_SHARE * mesh.bounds().diagonal());
    List<CaughtPlace> places = list(patches, speck);
    for (int f = 0; f < patch.length; f++) {
      if (patch[f] >= 0) {
        patch[f] = patches[patch[f]].rank(places.size());
      }
    }
    return new CaughtPlaces(direction, patch, depth, places, total, left);
  }

  /** The places in order; tells each patch its rank. */
  private static List<CaughtPlace> list(Patch[] patches, double speck) {
    List<CaughtPlace> places = new ArrayList<>();
    for (int k : order(patches)) {
      if (patches[k].into == null && patches[k].area >= speck) {
        patches[k].rank = places.size();
        places.add(patches[k].place());
      }
    }
    return places;
  }

  /** Numbers marked facets that share vertices; returns how many patches. */
  private static int gather(TriMesh mesh, int[] patch) {
    int[] parent = new int[mesh.vertexCount()];
    for (int v = 0; v < parent.length; v++) {
      parent[v] = v;
    }
    int[] tri = mesh.tri();
    for (int f = 0; f < patch.length; f++) {
      if (patch[f] == 0) {
        int a = root(parent, tri[3 * f]);
        int b = root(parent, tri[3 * f + 1]);
        parent[Math.max(a, b)] = Math.min(a, b);
        a = Math.min(a, b);
        int c = root(parent, tri[3 * f + 2]);
        parent[Math.max(a, c)] = Math.min(a, c);
      }
    }
    int[] number = new int[parent.length];
    Arrays.fill(number, -1);
    int count = 0;
    for (int f = 0; f < patch.length; f++) {
      if (patch[f] == 0) {
        int r = root(parent, tri[3 * f]);
        if (number[r] < 0) {
          number[r] = count++;
        }
        patch[f] = number[r];
      }
    }
    return count;
  }

  private static int root(int[] parent, int v) {
    int r = v;
    while (parent[r] != r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  }

  private static int[] order(Patch[] patches) {
    Integer[] boxed = new Integer[patches.length];
    for (int k = 0; k < boxed.length; k++) {
      boxed[k] = k;
    }
    Arrays.sort(boxed, (a, b) -> Double.compare(patches[b].area, patches[a].area));
    return Arrays.stream(boxed).mapToInt(Integer::intValue).toArray();
  }

  /** Adds each speck to the nearest place close enough; returns the area of those left over. */
  private static double mergeSpecks(Patch[] patches, int[] order, double speck, double reach) {
    int big = 0;
    while (big < order.length && patches[order[big]].area >= speck) {
      big++;
    }
    Vec3[] centers = new Vec3[big];
    for (int k = 0; k < big; k++) {
      centers[k] = patches[order[k]].center();
    }
    double left = 0;
    for (int i = big; i < order.length; i++) {
      Patch p = patches[order[i]];
      int nearest = -1;
      double best = reach;
      for (int k = 0; k < big; k++) {
        double d = centers[k].minus(p.center()).length();
        if (d < best) {
          best = d;
          nearest = k;
        }
      }
      if (nearest < 0) {
        left += p.area;
      } else {
        patches[order[nearest]].take(p);
      }
    }
    return left;
  }

  /** A patch while it is gathered. */
  private static final class Patch {
    double area;
    double depth;
    double width;
    double x;
    double y;
    double z;
    int facets;
    int rank = -1;
    Patch into;

    void add(TriMesh mesh, int f, double hidden, FacetHits hits) {
      double[] p = mesh.xyz();
      for (int k = 0; k < 3; k++) {
        int v = 3 * mesh.tri()[3 * f + k];
        x += hidden * p[v] / 3;
        y += hidden * p[v + 1] / 3;
        z += hidden * p[v + 2] / 3;
      }
      area += hidden;
      depth = Math.max(depth, hits.depth(f));
      width = Math.max(width, hits.width(f));
      facets++;
    }

    void take(Patch o) {
      area += o.area;
      depth = Math.max(depth, o.depth);
      width = Math.max(width, o.width);
      x += o.x;
      y += o.y;
      z += o.z;
      facets += o.facets;
      o.into = this;
    }

    /** The place this patch belongs to, or {@code unlisted}. */
    int rank(int unlisted) {
      int r = into == null ? rank : into.rank;
      return r < 0 ? unlisted : r;
    }

    Vec3 center() {
      return new Vec3(x / area, y / area, z / area);
    }

    CaughtPlace place() {
      return new CaughtPlace(center(), area, depth, width, facets);
    }
  }

  /** The pull direction looked along, unit. */
  public Vec3 direction() {
    return direction;
  }

  /** Whether neither side of the pull sees (half of, or a notable part of) facet {@code f}. */
  public boolean caught(int f) {
    return place[f] >= 0;
  }

  /**
   * The index of the place facet {@code f} belongs to; -1 when it is free, and the number of places
   * when it lies in a speck too small and too far off to be listed.
   */
  public int place(int f) {
    return place[f];
  }

  /** The most space shut in by a column through facet {@code f}, mm; 0 when it is free. */
  public double depth(int f) {
    return depth[f];
  }

  /** The places, largest hidden area first. */
  public List<CaughtPlace> places() {
    return places;
  }

  /** All hidden area, in listed places or not, mm². */
  public double area() {
    return area;
  }

  /** The hidden area of specks not listed as places, mm². */
  public double speckArea() {
    return speckArea;
  }
}
