package org.castwright.meshio;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/** The parts of a zip package, each streamed, never unpacked past the limit. */
final class OpcZip {

  /**
   * The directory at the end of a zip starts with these bytes, at most a comment before the end.
   */
  private static final byte[] END_MARK = {'P', 'K', 5, 6};

  private static final int END_SIZE = 22;
  private static final int LONGEST_COMMENT = 65_535;

  private final Source source;

  OpcZip(Source source) {
    this.source = source;
    if (!hasEnd()) {
      throw source.fault(
          "byte " + source.length(),
          "the zip has no directory at its end",
          "the file was cut short, " + Source.EXPORT_AGAIN);
    }
  }

  /**
   * Gives the part with that name (any case, a leading slash or not) to the consumer.
   *
   * @return false if there is no such part
   */
  boolean read(String part, Consumer<InputStream> consumer) {
    String wanted = plain(part);
    ByteArrayInputStream packed = new ByteArrayInputStream(source.bytes());
    try (ZipInputStream zip = new ZipInputStream(packed, StandardCharsets.UTF_8)) {
      Capped in = new Capped(zip, packed);
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        boolean found = plain(e.getName()).equals(wanted);
        if (found) {
          consumer.accept(in);
        }
        in.drain();
        if (found) {
          return true;
        }
      }
      return false;
    } catch (EOFException e) {
      throw source.fault(
          part, "the zip ends inside it", "the file was cut short, " + Source.EXPORT_AGAIN, e);
    } catch (IOException | IllegalArgumentException e) {
      throw source.fault(part, "the zip is damaged", Source.EXPORT_AGAIN, e);
    }
  }

  private static String plain(String name) {
    String s = name.startsWith("/") ? name.substring(1) : name;
    return s.toLowerCase(Locale.ROOT);
  }

  private boolean hasEnd() {
    byte[] b = source.bytes();
    int last = Math.max(0, b.length - END_SIZE - LONGEST_COMMENT);
    for (int i = b.length - END_SIZE; i >= last; i--) {
      if (b[i] == END_MARK[0]
          && b[i + 1] == END_MARK[1]
          && b[i + 2] == END_MARK[2]
          && b[i + 3] == END_MARK[3]) {
        return true;
      }
    }
    return false;
  }

  /** Counts what comes out of the zip. */
  private final class Capped extends FilterInputStream {

    private static final int BUFFER = 1 << 13;

    /** Progress is told once a mebibyte. */
    private static final int PROGRESS_SHIFT = 20;

    private final ByteArrayInputStream packed;
    private long total;

    Capped(ZipInputStream zip, ByteArrayInputStream packed) {
      super(zip);
      this.packed = packed;
    }

    /** Does nothing: an XML reader closes what it has read, but the zip goes on. */
    @Override
    public void close() {}

    @Override
    public int read() throws IOException {
      int b = super.read();
      count(b < 0 ? 0 : 1);
      return b;
    }

    @Override
    public int read(byte[] to, int from, int length) throws IOException {
      int n = super.read(to, from, length);
      count(Math.max(0, n));
      return n;
    }

    /** Reads the part to its end, which also checks its sum. */
    void drain() throws IOException {
      byte[] buffer = new byte[BUFFER];
      int n;
      do {
        n = read(buffer, 0, BUFFER);
      } while (n >= 0);
    }

    private void count(int n) {
      if ((total >> PROGRESS_SHIFT) != ((total + n) >> PROGRESS_SHIFT)) {
        source.progress(0, source.length() - packed.available(), source.length());
      }
      total += n;
      if (total > source.limits().maxBytes()) {
        throw source.fault(
            "zip",
            "it unpacks to more than the limit of " + source.limits().maxBytes() + " bytes",
            "reduce the model and export it again");
      }
    }
  }
}
