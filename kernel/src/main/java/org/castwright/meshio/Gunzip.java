package org.castwright.meshio;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/** Unpacks gzip in two passes: the first counts, so that no room is made for a bomb. */
final class Gunzip {

  private static final int BUFFER = 1 << 16;

  private final Source packed;

  private Gunzip(Source packed) {
    this.packed = packed;
  }

  static boolean isGzip(byte[] b) {
    return b.length > 1 && (b[0] & 0xff) == 0x1f && (b[1] & 0xff) == 0x8b;
  }

  static byte[] unpack(Source packed) throws IOException {
    Gunzip g = new Gunzip(packed);
    try {
      int length = g.count();
      try (InputStream in = g.open()) {
        return in.readNBytes(length);
      }
    } catch (EOFException e) {
      throw packed.fault(
          "byte " + packed.length(),
          "the gzip data end too early",
          "the file was cut short, copy it again",
          e);
    } catch (ZipException e) {
      throw packed.fault("gzip data", "they are damaged", "copy the file again", e);
    }
  }

  private InputStream open() throws IOException {
    return new GZIPInputStream(new ByteArrayInputStream(packed.bytes()), BUFFER);
  }

  private int count() throws IOException {
    long most = packed.limits().maxBytes();
    byte[] buffer = new byte[BUFFER];
    long total = 0;
    try (InputStream in = open()) {
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        total += n;
        if (total > most) {
          throw packed.fault(
              "gzip data",
              "they unpack to more than the limit of " + most + " bytes",
              "reduce the model and export it again");
        }
      }
    }
    return (int) total;
  }
}
