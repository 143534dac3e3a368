package org.castwright.meshio;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.castwright.mesh.MeshException;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Valid files cut and corrupted at random: a mesh or one sentence, soon, in little memory. */
class DamagedFilesTest {

  private static final int RUNS = 1500;

  /** The files are under a kilobyte; readers and zip buffers need far less than this. */
  private static final long MOST_BYTES = 8 << 20;

  /** Printable damage reaches deeper into text than arbitrary bytes. */
  private static final String INK = "0123456789-.eE/ \n#<>'\"&";

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "pyramid-binary.stl", "pyramid-text.stl", "pyramid.obj", "pyramid-ascii.ply",
        "pyramid-little.ply", "pyramid-big.ply", "pyramid.off", "pyramid.3mf",
        "pyramid-binary.stl.gz", "unpacked.3mf"
      })
  void neverMoreThanASentence(String name) {
    byte[] good = name.equals("unpacked.3mf") ? new byte[0] : ModelFiles.golden(name);
    assertTimeoutPreemptively(
        Duration.ofSeconds(20),
        () -> {
          SplittableRandom random = new SplittableRandom(name.hashCode());
          Path file = folder.resolve(name);
          for (int run = 0; run < RUNS; run++) {
            Files.write(
                file, name.equals("unpacked.3mf") ? damagedModel(random) : damaged(good, random));
            readOrRefuse(file, name + " run " + run);
          }
        });
  }

  private static void readOrRefuse(Path file, String run) throws IOException {
    long before = allocated();
    try {
      assertTrue(MeshReader.read(file).mesh().triangleCount() > 0, run);
    } catch (MeshException e) {
      String message = e.getMessage();
      assertTrue(message.startsWith(file.getFileName() + ", ") && message.endsWith("."), message);
      assertTrue(message.length() < 400, message);
    } catch (RuntimeException e) {
      throw new AssertionError(run + " on " + Arrays.toString(Files.readAllBytes(file)), e);
    }
    long used = allocated() - before;
    assertTrue(used < MOST_BYTES, run + " allocated " + used);
  }

  private static long allocated() {
    var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    return threads.getCurrentThreadAllocatedBytes();
  }

  /** The XML damaged before it is packed, so that the zip's own sums do not catch it first. */
  private static byte[] damagedModel(SplittableRandom random) {
    String model =
        ModelFiles.model(
            "unit='inch'",
            "<resources><object id='1'>"
                + ModelFiles.TETRA_MESH
                + "</object><object id='2'>"
                + "<components><component objectid='1' transform='-1 0 0 0 1 0 0 0 1 0 0 0'/>"
                + "</components></object></resources><build><item objectid='2'/></build>");
    byte[] bad = damaged(ModelFiles.ascii(model), random);
    String text = new String(bad, StandardCharsets.ISO_8859_1);
    return ModelFiles.zip(List.of("3D/3dmodel.model", text));
  }

  private static byte[] damaged(byte[] good, SplittableRandom random) {
    byte[] bad = good.clone();
    int kind = random.nextInt(4);
    if (kind == 0) {
      return Arrays.copyOf(bad, random.nextInt(bad.length));
    }
    if (kind == 1) {
      // a piece taken out
      int from = random.nextInt(bad.length);
      int to = random.nextInt(from, bad.length);
      byte[] shorter = Arrays.copyOf(bad, bad.length - (to - from));
      System.arraycopy(bad, to, shorter, from, bad.length - to);
      return shorter;
    }
    int hits = 1 + random.nextInt(6);
    for (int i = 0; i < hits; i++) {
      int at = random.nextInt(bad.length);
      bad[at] = (byte) (kind == 2 ? random.nextInt(256) : INK.charAt(random.nextInt(INK.length())));
    }
    return bad;
  }
}
