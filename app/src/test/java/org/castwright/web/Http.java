package org.castwright.web;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** HTTP by hand: a well-behaved client would not send what these tests send. */
final class Http {

  private static final Pattern LENGTH = Pattern.compile("(?i)\r\ncontent-length: (\\d+)");

  private final int port;
  private final String token;

  Http(Bench bench) {
    port = bench.port();
    token = bench.address().replaceAll(".*token=", "");
  }

  String host() {
    return "127.0.0.1:" + port;
  }

  /** An answer. */
  @SuppressWarnings("ArrayRecordComponent") // read, never compared
  record Answer(int status, String head, byte[] body) {
    String text() {
      return new String(body, StandardCharsets.UTF_8);
    }
  }

  /** A request with the right host and token. */
  Answer call(String method, String path) throws IOException {
    return call(method, path, new byte[0]);
  }

  Answer call(String method, String path, byte[] body) throws IOException {
    return raw(
        method,
        path,
        List.of(
            "Host: " + host(), "Authorization: Bearer " + token, "Content-Length: " + body.length),
        body);
  }

  Answer post(String path, String body) throws IOException {
    return call("POST", path, body.getBytes(StandardCharsets.UTF_8));
  }

  /** A request with these headers and no others. */
  Answer raw(String method, String path, List<String> headers, byte[] body) throws IOException {
    try (Socket s = new Socket(InetAddress.getByAddress(new byte[] {127, 0, 0, 1}), port)) {
      s.setSoTimeout(20_000);
      List<String> lines = new ArrayList<>();
      lines.add(method + " " + path + " HTTP/1.1");
      lines.addAll(headers);
      lines.add("Connection: close");
      OutputStream out = s.getOutputStream();
      out.write((String.join("\r\n", lines) + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
      try {
        out.write(body);
        out.flush();
      } catch (IOException refusedMeanwhile) {
        // the server may answer and close before it has read all
        s.shutdownInput();
        throw refusedMeanwhile;
      }
      return answer(new BufferedInputStream(s.getInputStream()));
    }
  }

  private static Answer answer(InputStream in) throws IOException {
    byte[] all = whole(in);
    String text = new String(all, StandardCharsets.ISO_8859_1);
    int end = text.indexOf("\r\n\r\n");
    if (end < 0) {
      throw new IOException("no answer but: " + text);
    }
    String head = text.substring(0, end);
    int status = Integer.parseInt(head.split(" ", 3)[1]);
    byte[] body = text.substring(end + 4).getBytes(StandardCharsets.ISO_8859_1);
    boolean chunked = head.toLowerCase(Locale.ROOT).contains("transfer-encoding: chunked");
    return new Answer(status, head, chunked ? joined(body) : body);
  }

  /** Up to the length the answer states; the connection may stay open if the request was cut. */
  private static byte[] whole(InputStream in) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    long wanted = Long.MAX_VALUE;
    for (int b = 0; out.size() < wanted && b >= 0; ) {
      b = in.read();
      if (b >= 0) {
        out.write(b);
      }
      if (b == '\n' && wanted == Long.MAX_VALUE) {
        String head = out.toString(StandardCharsets.ISO_8859_1);
        Matcher length = LENGTH.matcher(head);
        if (head.endsWith("\r\n\r\n") && length.find()) {
          wanted = head.length() + Long.parseLong(length.group(1));
        }
      }
    }
    return out.toByteArray();
  }

  private static byte[] joined(byte[] chunks) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    String text = new String(chunks, StandardCharsets.ISO_8859_1);
    int at = 0;
    while (true) {
      int eol = text.indexOf("\r\n", at);
      int n = Integer.parseInt(text.substring(at, eol), 16);
      if (n == 0) {
        return out.toByteArray();
      }
      out.write(chunks, eol + 2, n);
      at = eol + 2 + n + 2;
    }
  }
}
