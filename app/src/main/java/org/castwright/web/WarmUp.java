package org.castwright.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.HttpURLConnection;
import java.net.Proxy;
import java.net.URL;
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
    URL url = new URL("http", "127.0.0.1", port, path);
    HttpURLConnection c = (HttpURLConnection) url.openConnection(Proxy.NO_PROXY);
    c.setRequestProperty("Authorization", "Bearer " + token);
    try (InputStream in = c.getInputStream()) {
      in.transferTo(OutputStream.nullOutputStream());
    }
  }
}
