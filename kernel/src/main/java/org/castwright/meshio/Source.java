package org.castwright.meshio;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.castwright.mesh.MeshException;
import org.castwright.progress.Progress;

/** The unpacked bytes of one model file and what a reader has to say about them. */
final class Source {

  static final String EXPORT_AGAIN = "export the model again";

  private static final int PROGRESS_STEP = 1 << 16;

  private final String name;
  private final byte[] bytes;
  private final ReadLimits limits;
  private final Progress progress;
  private final List<String> notes = new ArrayList<>();

  Source(String name, byte[] bytes, ReadLimits limits, Progress progress) {
    this.name = name;
    this.bytes = bytes;
    this.limits = limits;
    this.progress = progress;
  }

  String name() {
    return name;
  }

  byte[] bytes() {
    return bytes;
  }

  int length() {
    return bytes.length;
  }

  ReadLimits limits() {
    return limits;
  }

  List<String> notes() {
    return notes;
  }

  void note(String sentence) {
    notes.add(sentence);
  }

  /** Says how far reading is, once in every so many steps; {@code done} of {@code all} bytes. */
  void progress(int step, long done, long all) {
    if (step % PROGRESS_STEP == 0) {
      progress.at("read " + name, Math.min(1, done / (double) all));
    }
  }

  /** The one sentence: file, where, what, what to do. */
  MeshException fault(String where, String what, String remedy) {
    return fault(where, what, remedy, null);
  }

  MeshException fault(String where, String what, String remedy, Throwable cause) {
    return new MeshException(name + ", " + where + ": " + what + "; " + remedy + ".", cause);
  }

  /** Refuses a count of triangles over the limit. */
  int allowed(long triangles, String where) {
    if (triangles > limits.maxTriangles()) {
      throw fault(
          where,
          triangles + " triangles are more than the limit of " + limits.maxTriangles(),
          "reduce the model and export it again");
    }
    return (int) triangles;
  }

  /** Whether the word stands at the place, letters of either case; it must be in lower case. */
  boolean hasWord(int at, String word) {
    if (at < 0 || at + word.length() > bytes.length) {
      return false;
    }
    for (int i = 0; i < word.length(); i++) {
      if (lower(bytes[at + i]) != word.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  /** Bytes as text for a message: short, and printable whatever they are. */
  String quote(int from, int to) {
    int end = Math.min(to, from + 24);
    String s = new String(bytes, from, Math.max(0, end - from), StandardCharsets.ISO_8859_1);
    return "'" + s.replaceAll("[^\\x20-\\x7e]", "?") + (end < to ? "..." : "") + "'";
  }

  static int lower(byte b) {
    return b >= 'A' && b <= 'Z' ? b + ('a' - 'A') : b;
  }
}
