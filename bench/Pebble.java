import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Writes a wavy pebble as binary STL: {@code java Pebble.java FREQUENCY FILE [dimpled]}. The faces of an
 * icosahedron, each cut into FREQUENCY² triangles and blown up to a sphere, give 20 · FREQUENCY²
 * even triangles. Their corners (x, y, z) go to (50 x, 35 y, 22 z · bumps + wave), where bumps and
 * wave depend on x and y alone: two heights over each point of the plan, so the body opens along z,
 * on a seam that is not flat.
 *
 * <p>Dimpled, they go to a ball of 50 mm with three dimples in one plane, 120° apart and 15 mm deep,
 * too steep for one pull to free two of them: it opens in three pulls and no fewer.
 */
public final class Pebble {

  private static final double GOLDEN = (1 + Math.sqrt(5)) / 2;

  /** Width of a dimple, degrees from its axis. */
  private static final double WIDE = 12;

  private static final double[][] CORNERS = {
    {-1, GOLDEN, 0}, {1, GOLDEN, 0}, {-1, -GOLDEN, 0}, {1, -GOLDEN, 0},
    {0, -1, GOLDEN}, {0, 1, GOLDEN}, {0, -1, -GOLDEN}, {0, 1, -GOLDEN},
    {GOLDEN, 0, -1}, {GOLDEN, 0, 1}, {-GOLDEN, 0, -1}, {-GOLDEN, 0, 1}
  };

  private static final int[][] FACES = {
    {0, 11, 5}, {0, 5, 1}, {0, 1, 7}, {0, 7, 10}, {0, 10, 11},
    {1, 5, 9}, {5, 11, 4}, {11, 10, 2}, {10, 7, 6}, {7, 1, 8},
    {3, 9, 4}, {3, 4, 2}, {3, 2, 6}, {3, 6, 8}, {3, 8, 9},
    {4, 9, 5}, {2, 4, 11}, {6, 2, 10}, {8, 6, 7}, {9, 8, 1}
  };

  private Pebble() {}

  public static void main(String[] args) throws IOException {
    int n = Integer.parseInt(args[0]);
    boolean dimpled = args.length > 2 && args[2].equals("dimpled");
    ByteBuffer b = ByteBuffer.allocate(50).order(ByteOrder.LITTLE_ENDIAN);
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(Path.of(args[1])))) {
      byte[] header = new byte[80];
      byte[] words = "wavy pebble, mm".getBytes(StandardCharsets.US_ASCII);
      System.arraycopy(words, 0, header, 0, words.length);
      out.write(header);
      out.write(ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN).putInt(20 * n * n).array());
      for (int[] face : FACES) {
        for (int i = 0; i < n; i++) {
          for (int j = 0; j < n - i; j++) {
            float[] right = at(face, n, i + 1, j, dimpled);
            float[] up = at(face, n, i, j + 1, dimpled);
            write(out, b, at(face, n, i, j, dimpled), right, up);
            if (i + j < n - 1) {
              write(out, b, right, at(face, n, i + 1, j + 1, dimpled), up);
            }
          }
        }
      }
    }
  }

  /**
   * Corner i, j of a face. On an edge one weight is zero, and a sum of two terms does not depend on
   * their order: both faces of the edge get the very same point.
   */
  private static float[] at(int[] face, int n, int i, int j, boolean dimpled) {
    double[] p = new double[3];
    for (int c = 0; c < 3; c++) {
      p[c] = (n - i - j) * CORNERS[face[0]][c] + i * CORNERS[face[1]][c] + j * CORNERS[face[2]][c];
    }
    double length = Math.sqrt(p[0] * p[0] + p[1] * p[1] + p[2] * p[2]);
    double x = p[0] / length;
    double y = p[1] / length;
    double z = p[2] / length;
    if (dimpled) {
      double r = radius(x, y, z);
      return new float[] {(float) (r * x), (float) (r * y), (float) (r * z)};
    }
    double bumps = 1 + 0.06 * StrictMath.sin(11 * x) * StrictMath.cos(9 * y);
    double wave = 4 * StrictMath.sin(3 * x) * StrictMath.cos(4 * y);
    return new float[] {(float) (50 * x), (float) (35 * y), (float) (22 * z * bumps + wave)};
  }

  private static double radius(double x, double y, double z) {
    double deep = 0;
    for (int k = 0; k < 3; k++) {
      double a = Math.toRadians(10 + 120.0 * k);
      double toward = x * StrictMath.cos(a) + y * StrictMath.sin(a);
      double off = Math.toDegrees(StrictMath.acos(Math.max(-1, Math.min(1, toward))));
      deep += StrictMath.exp(-off * off / (WIDE * WIDE));
    }
    return 50 - 15 * deep;
  }

  /** One triangle; the normal stays zero, which readers take from the corners. */
  private static void write(OutputStream out, ByteBuffer b, float[]... corners)
      throws IOException {
    b.clear();
    b.putFloat(0).putFloat(0).putFloat(0);
    for (float[] p : corners) {
      b.putFloat(p[0]).putFloat(p[1]).putFloat(p[2]);
    }
    b.putShort((short) 0);
    out.write(b.array());
  }
}
