package org.castwright.repair;

/**
 * One thing that was done to a model, or found in it and left.
 *
 * @param name a short fixed name, such as {@code close-holes}
 * @param words one sentence for the report
 * @param count how many items it concerned
 * @param largestMovementMm how far the step moved any part of the surface at most, millimeters;
 *     zero where triangles were only dropped, added, turned or relabeled
 */
public record HealingStep(String name, String words, int count, double largestMovementMm) {}
