package org.castwright.plan;

/** The seam surface as the planner sees it: a height field outside the casting's shadow. */
interface Ground {

  /** Height of the sheet, mm; NaN where the casting covers the point. */
  double heightAt(double x, double y);

  /** Height of the casting's roof, mm; NaN outside its shadow. */
  double roofAt(double x, double y);

  /** Height of the casting's underside, mm; NaN outside its shadow. */
  double undersideAt(double x, double y);

  /** Distance to the casting's shadow, mm; 0 inside it. */
  double shadowDistance(double x, double y);

  /** Distance to the shadow of the nearest side piece, mm; infinite without side pieces. */
  default double sideDistance(double x, double y) {
    return Double.POSITIVE_INFINITY;
  }
}
