/**
 * Pictures of molds and castings as PNG files, drawn without a display and without a graphics card.
 * Accepts triangle meshes, colors, lines and labels in millimeters; promises the same bytes for the
 * same input on one machine, whatever the number of threads, and lines that are hidden where a
 * surface hides them. The steps: {@code Camera} fits the view, {@code Stage} lays every triangle on
 * the sheet, {@code Band} finds the nearest surface at four samples a pixel, shades and inks it,
 * {@code Overlay} writes the words. Needs a font known to Java for captions. Does not judge a mold:
 * numbers to be mapped to colors come from the caller.
 */
package org.castwright.pictures;
