package org.castwright.batch;

import java.util.ArrayList;
import java.util.List;

/**
 * Cost in the user's own money: only what has a price is counted, the rest is named.
 *
 * @param lines priced
 * @param unpriced names of what has no price
 * @param total of the lines
 */
public record Cost(List<Line> lines, List<String> unpriced, double total) {

  /** One thing bought: amount times price. */
  public record Line(String name, double amount, double price, double cost) {}

  /** What is needed, with a price or without (not a number). */
  public record Need(String name, double amount, double price) {}

  /** Adds up what has a price. */
  public static Cost of(List<Need> needs) {
    List<Line> lines = new ArrayList<>();
    List<String> unpriced = new ArrayList<>();
    double total = 0;
    for (Need n : needs) {
      if (Double.isNaN(n.price)) {
        unpriced.add(n.name);
      } else if (n.price < 0) {
        throw new IllegalArgumentException("a price is not below zero: " + n.name);
      } else {
        double cost = n.amount * n.price;
        lines.add(new Line(n.name, n.amount, n.price, cost));
        total += cost;
      }
    }
    return new Cost(List.copyOf(lines), List.copyOf(unpriced), total);
  }
}
