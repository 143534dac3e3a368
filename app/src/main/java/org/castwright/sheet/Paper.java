package org.castwright.sheet;

import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Sizes of paper: A4 by ISO 216 (210 × 297 mm) and US Letter (8.5 × 11 in). */
public enum Paper {
  A4,
  LETTER;

  PDRectangle size() {
    return this == A4 ? PDRectangle.A4 : PDRectangle.LETTER;
  }
}
