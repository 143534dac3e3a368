package org.castwright.web;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;

/**
 * A call of the server.
 *
 * @param path with {@code {names}} for parts; the last one, if called {@code {path}}, takes the
 *     rest
 */
record Route(String method, String path, Handler handler) {

  /** Answers a call. */
  @FunctionalInterface
  interface Handler {
    void serve(HttpExchange x, Map<String, String> parts) throws IOException;
  }

  /**
   * The named parts of a request's path, or null if it is not this call. Parts stay as they came,
   * percent signs and all: no name of ours needs any.
   */
  Map<String, String> match(String asked) {
    String[] want = path.split("/", -1);
    String[] have = asked.split("/", path.endsWith("/{path}") ? want.length : -1);
    if (want.length != have.length) {
      return null;
    }
    Map<String, String> parts = new TreeMap<>();
    for (int i = 0; i < want.length; i++) {
      if (want[i].startsWith("{")) {
        parts.put(want[i].substring(1, want[i].length() - 1), have[i]);
      } else if (!want[i].equals(have[i])) {
        return null;
      }
    }
    return parts;
  }
}
