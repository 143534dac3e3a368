package org.castwright.web;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Asks a bench that has just started for what its page asks first, in the background: the first
 * answer of each kind is slow, for Java loads what it needs only then.
 */
final class WarmUp implements Runnable {

  private static final List<String> FIRST =
      List.of("/", "/style.css", "/bench.js", "/api/calibration", "/api/jobs", "/api/bin");

  private final int port;
  private final String token;

  private WarmUp(int port, String token) {
    this.port = port;
    this.token = token;
  }

  static void begin(int port, String token) {
    Thread t = new Thread(new WarmUp(port, token), "warm up");
    t.setDaemon(true);
    t.start();
  }

  @Override
  public void run() {
    try {
      for (String path : FIRST) {
        ask(path);
      }
    } catch (IOException e) {
      // the bench was closed meanwhile, or the first person to ask waits a little longer
    }
  }

  private void ask(String path) throws IOException {
    String request =
        "GET %s HTTP/1.1\r\nHost: 127.0.0.1:%d\r\nAuthorization: Bearer %s\r\nConnection: close\r\n\r\n"
            .formatted(path, port, token);
    try (Socket s = new Socket(InetAddress.getByAddress(new byte[] {127, 0, 0, 1}), port)) {
      OutputStream out = s.getOutputStream();
      out.write(request.getBytes(StandardCharsets.US_ASCII));
      s.getInputStream().transferTo(OutputStream.nullOutputStream());
    }
  }
}
