package org.castwright.pictures;

/**
 * Size of the sheet and how it is drawn.
 *
 * @param width pixels
 * @param height pixels
 * @param threads how many threads draw; the picture is the same for any number
 * @param creaseDegrees edges whose facets turn by more than this are inked
 */
public record PictureOptions(int width, int height, int threads, double creaseDegrees) {

  private static final int SMALLEST = 240;
  private static final int LARGEST = 8000;

  /**
   * 1200 by 900 prints 100 mm wide at 300 dots an inch; 30 degrees is above the turn between facets
   * of a reasonably fine curved surface (a 12-sided cylinder turns by 30) and below every edge a
   * person would call sharp.
   */
  public static final PictureOptions DEFAULT =
      new PictureOptions(1200, 900, Runtime.getRuntime().availableProcessors(), 30);

  public PictureOptions {
    if (width < SMALLEST || height < SMALLEST || width > LARGEST || height > LARGEST) {
      throw new IllegalArgumentException(
          "a picture is "
              + SMALLEST
              + " to "
              + LARGEST
              + " pixels a side: "
              + width
              + " x "
              + height);
    }
    if (threads < 1) {
      throw new IllegalArgumentException("at least one thread must draw");
    }
  }

  public PictureOptions sized(int newWidth, int newHeight) {
    return new PictureOptions(newWidth, newHeight, threads, creaseDegrees);
  }

  public PictureOptions withThreads(int newThreads) {
    return new PictureOptions(width, height, newThreads, creaseDegrees);
  }
}
