package org.castwright.pictures;

/** A line of the legend: a color and what it stands for. */
public record Swatch(int rgb, String name) {}
