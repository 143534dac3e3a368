package org.castwright.advice;

import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.mesh.TriMesh;

/**
 * A mold to be poured, in the mold frame.
 *
 * @param casting as the cavity holds it
 * @param channels gate and vents outside the casting, without triangles when there are none
 * @param block the outer body before anything was cut from it
 * @param sideWallMm wall of a block that follows the casting's outline, else infinite: then its box
 *     tells
 * @param pieces in the order they come off
 * @param bores gates and vents
 * @param holds what holds the pieces together
 * @param sizes of the casting
 * @param material what is poured
 * @param up against gravity
 * @param print how the mold is printed
 * @param order how many and at what price
 * @param cooling how its cooling or curing is looked at
 */
public record PourJob(
    TriMesh casting,
    TriMesh channels,
    TriMesh block,
    double sideWallMm,
    List<Piece> pieces,
    List<Bore> bores,
    Holds holds,
    Sizes sizes,
    Material material,
    Vec3 up,
    Print print,
    Order order,
    Cooling cooling) {

  public PourJob {
    pieces = List.copyOf(pieces);
    bores = List.copyOf(bores);
    up = up.unit();
  }

  /** A piece in the closed mold. */
  public record Piece(String name, TriMesh mesh, Vec3 pull) {}

  /**
   * A gate or vent.
   *
   * @param axis from the casting to the outside
   * @param boreMm least diameter
   * @param mouthMm diameter at the outside
   */
  public record Bore(String name, boolean gate, List<Vec3> axis, double boreMm, double mouthMm) {
    public Bore {
      axis = List.copyOf(axis);
    }

    double lengthMm() {
      double sum = 0;
      for (int i = 0; i + 1 < axis.size(); i++) {
        sum += axis.get(i + 1).minus(axis.get(i)).length();
      }
      return sum;
    }
  }

  /** How many bands, bolts or clamps there are; {@code none} and 0 without any. */
  public record Holds(String kind, int count) {}

  /**
   * Sizes along the model's axes.
   *
   * @param wantedMm of the casting
   * @param scale of the cavity over the wanted size
   * @param stated whether the maker stated the shrink: then the table's band is not held against it
   */
  public record Sizes(Vec3 wantedMm, Vec3 scale, boolean stated) {}

  /** How finely to look at heat. */
  public enum Fineness {
    OFF,
    COARSE,
    FINE
  }

  /**
   * How it cools or cures.
   *
   * @param airC of the air, °C, or null for the material's usual
   * @param wallOf id of what the mold is made of, or null for the usual print
   * @param threads worker threads; no result depends on them
   */
  public record Cooling(Fineness fineness, Double airC, String wallOf, int threads) {

    public static final Cooling OFF = new Cooling(Fineness.OFF, null, null, 1);

    public Cooling {
      if (threads < 1) {
        throw new IllegalArgumentException("heat needs a thread");
      }
    }

    /** In the usual air and wall; an answer in seconds. */
    public static Cooling coarse(int threads) {
      return new Cooling(Fineness.COARSE, null, null, threads);
    }
  }

  /** The printing process. */
  public enum Print {
    FDM,
    RESIN
  }

  /**
   * What is asked of the bench; prices not a number when unknown.
   *
   * @param castings wanted
   * @param molds at hand
   * @param castPrice for each kg of casting material
   * @param printPrice for each kg of printed plastic
   */
  public record Order(int castings, int molds, double castPrice, double printPrice) {

    public static final Order ONE = new Order(1, 1, Double.NaN, Double.NaN);

    public Order {
      if (castings < 1 || molds < 1) {
        throw new IllegalArgumentException("at least one casting and one mold are made");
      }
      if (castPrice < 0 || printPrice < 0) {
        throw new IllegalArgumentException("a price is not below zero");
      }
    }
  }
}
