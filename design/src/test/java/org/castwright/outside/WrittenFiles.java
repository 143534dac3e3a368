package org.castwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLStreamException;
import org.castwright.pipeline.Report;

/** What every finished job's mesh files must hold to, whatever was molded. */
final class WrittenFiles {

  /** Piece volumes of the STL (floats) against the 3MF (shortest decimals of the same floats). */
  private static final double SAME = 1e-9;

  private WrittenFiles() {}

  /** Checks all mesh files of a job. */
  static void check(Jobs.Done done) throws IOException, XMLStreamException {
    Report r = done.result().report();
    for (String f : done.stl()) {
      checkStl(f, done.files().get(f));
    }
    List<ThreeMfRules.Item> items = ThreeMfRules.items(done.files().get("mold.3mf"));
    List<String> names = new ArrayList<>();
    List<Double> volumes = new ArrayList<>();
    for (Report.PieceFile p : r.pieces()) {
      names.add(p.name());
      volumes.add(p.volumeMm3());
      assertEquals(84 + 50 * p.triangles(), done.files().get(p.file()).length, p.file());
    }
    names.add("casting");
    volumes.add(r.casting().volumeMm3());
    assertEquals(names, items.stream().map(ThreeMfRules.Item::name).toList());
    for (int i = 0; i < items.size(); i++) {
      assertEquals("model", items.get(i).type());
      double v = volumes.get(i);
      assertEquals(v, items.get(i).holdRules(), SAME * v, names.get(i));
    }
  }

  /**
   * Binary STL: 80 bytes of header, a 32-bit count, 50 bytes a triangle (3D Systems,
   * StereoLithography Interface Specification, 1988), so 84 + 50 n bytes; the header must not start
   * with "solid", which would make it look like the text form.
   */
  private static void checkStl(String name, byte[] bytes) {
    int n = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getInt(80);
    assertTrue(n > 0, name);
    assertEquals(84 + 50L * n, bytes.length, name);
    assertTrue(bytes[0] != 's' || bytes[1] != 'o', name);
  }
}
