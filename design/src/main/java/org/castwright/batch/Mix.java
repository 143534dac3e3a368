package org.castwright.batch;

import java.util.ArrayList;
import java.util.List;

/**
 * A batch of one to four components.
 *
 * @param parts what to weigh or measure, in the order asked
 * @param totalG mass of the batch
 * @param totalMl volume, by additive volumes; not a number when a density is missing
 */
public record Mix(List<Part> parts, double totalG, double totalMl) {

  /** More components than this are not mixed at a bench. */
  public static final int MOST = 4;

  /**
   * A component as the supplier states it.
   *
   * @param name for the sheet
   * @param share parts by weight, in any unit
   * @param densityKgPerM3 or not a number when unknown
   */
  public record Component(String name, double share, double densityKgPerM3) {
    public Component {
      if (!(share > 0)) {
        throw new IllegalArgumentException("a component needs a share above zero: " + name);
      }
    }
  }

  /** What to take of a component; the volume is not a number when its density is unknown. */
  public record Part(String name, double massG, double volumeMl) {}

  /** Divides a mass by weight. */
  public static Mix ofMass(double totalG, List<Component> components) {
    if (components.isEmpty() || components.size() > MOST) {
      throw new IllegalArgumentException("a mix has one to four components");
    }
    double sum = components.stream().mapToDouble(Component::share).sum();
    List<Part> parts = new ArrayList<>();
    double volume = 0;
    for (Component c : components) {
      double mass = totalG * c.share / sum;
      double ml = mass / c.densityKgPerM3 * 1000;
      parts.add(new Part(c.name, mass, ml));
      volume += ml;
    }
    return new Mix(List.copyOf(parts), totalG, volume);
  }

  /** Shares by volume turned into shares by weight; every density must be known. */
  public static List<Component> byVolume(List<Component> components) {
    return components.stream()
        .map(
            c -> {
              if (!(c.densityKgPerM3 > 0)) {
                throw new IllegalArgumentException("no density is known for " + c.name);
              }
              return new Component(c.name, c.share * c.densityKgPerM3, c.densityKgPerM3);
            })
        .toList();
  }

  /** Mass of what fills a volume with a share of loss on top, g. */
  public static double massG(double volumeMl, double densityKgPerM3, double lossShare) {
    return volumeMl * densityKgPerM3 / 1000 * (1 + lossShare);
  }

  /** What fills a box round a master, ml. */
  public static double boxLessMasterMl(double boxMl, double masterMl) {
    if (!(boxMl > masterMl)) {
      throw new IllegalArgumentException("the master is larger than its box");
    }
    return boxMl - masterMl;
  }
}
