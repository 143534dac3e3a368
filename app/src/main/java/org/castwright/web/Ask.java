package org.castwright.web;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/** Reads requests and bounds what they may bring. */
final class Ask {

  private static final int BUFFER = 1 << 16;

  private Ask() {}

  /** The parameters after the question mark. */
  static Map<String, String> query(HttpExchange x) {
    Map<String, String> out = new TreeMap<>();
    String raw = x.getRequestURI().getRawQuery();
    if (raw == null) {
      return out;
    }
    for (String part : raw.split("&", -1)) {
      String[] pair = part.split("=", 2);
      out.put(decoded(pair[0]), pair.length == 2 ? decoded(pair[1]) : "");
    }
    return out;
  }

  private static String decoded(String s) {
    try {
      return URLDecoder.decode(s, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      throw new Refused(400, "The address of the request is damaged.");
    }
  }

  /**
   * The whole body as text.
   *
   * @throws Refused if it is longer than {@code most} bytes
   */
  static String text(HttpExchange x, long most) throws IOException {
    checkLength(x, most);
    try (InputStream in = x.getRequestBody()) {
      byte[] body = in.readNBytes((int) most + 1);
      if (body.length > most) {
        throw tooLong(most);
      }
      return new String(body, StandardCharsets.UTF_8);
    }
  }

  /**
   * Copies the body as it comes.
   *
   * @throws Refused as soon as it is longer than {@code most} bytes
   */
  static long copy(HttpExchange x, OutputStream out, long most) throws IOException {
    checkLength(x, most);
    long sum = 0;
    byte[] room = new byte[BUFFER];
    try (InputStream in = x.getRequestBody()) {
      for (int n = in.read(room); n >= 0; n = in.read(room)) {
        sum += n;
        if (sum > most) {
          throw tooLong(most);
        }
        out.write(room, 0, n);
      }
    }
    return sum;
  }

  private static void checkLength(HttpExchange x, long most) {
    String length = x.getRequestHeaders().getFirst("Content-Length");
    if (length == null) {
      return;
    }
    try {
      if (Long.parseLong(length) > most) {
        throw tooLong(most);
      }
    } catch (NumberFormatException e) {
      throw new Refused(400, "The length of the request is no number.");
    }
  }

  private static Refused tooLong(long most) {
    return new Refused(
        413, "This is too large: at most " + Math.max(1, most >> 20) + " MB are taken.");
  }
}
