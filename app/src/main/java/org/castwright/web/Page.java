package org.castwright.web;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The files of the page, which come with the program. */
final class Page {

  private static final String INDEX = "index.html";

  /** What may be asked for, and where it lies. */
  private static final Map<String, String> FILES =
      Map.ofEntries(
          Map.entry("/", "page/" + INDEX),
          Map.entry("/style.css", "page/style.css"),
          Map.entry("/bench.js", "page/bench.js"),
          Map.entry("/calls.js", "page/calls.js"),
          Map.entry("/view.js", "page/view.js"),
          Map.entry("/page.js", "page/page.js"),
          Map.entry("/fields.js", "page/fields.js"),
          Map.entry("/hands.js", "page/hands.js"),
          Map.entry("/brush.js", "page/brush.js"),
          Map.entry("/coat.js", "page/coat.js"),
          Map.entry("/frame.js", "page/frame.js"),
          Map.entry("/pulls.js", "page/pulls.js"),
          Map.entry("/tools.js", "page/tools.js"),
          Map.entry("/trial.js", "page/trial.js"),
          Map.entry("/printer.js", "page/printer.js"),
          Map.entry("/shelf.js", "page/shelf.js"),
          Map.entry("/icon.svg", "page/icon.svg"),
          Map.entry("/openapi.json", "page/openapi.json"),
          Map.entry("/three/three.module.min.js", "three/three.module.min.js"),
          Map.entry("/three/OrbitControls.js", "three/OrbitControls.js"),
          Map.entry("/three/GLTFLoader.js", "three/GLTFLoader.js"),
          Map.entry("/utils/BufferGeometryUtils.js", "three/BufferGeometryUtils.js"));

  private static final Pattern MAP =
      Pattern.compile("<script type=\"importmap\">(.*?)</script>", Pattern.DOTALL);

  private final Path folder;
  private final String index;
  private final String policy;

  /**
   * The page.
   *
   * @param folder that it names as the place of models and jobs
   */
  Page(Path folder) throws IOException {
    this.folder = folder;
    index = new String(bytes("page/" + INDEX), StandardCharsets.UTF_8);
    policy =
        "default-src 'none'; script-src 'self' 'sha256-"
            + hashOfMap(index)
            + "'; style-src 'self'; img-src 'self' blob: data:; connect-src 'self';"
            + " base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
  }

  /** The one script inside the page, which says where modules lie, is allowed by its hash. */
  private static String hashOfMap(String html) {
    Matcher m = MAP.matcher(html);
    if (!m.find()) {
      throw new IllegalStateException("the page has no import map");
    }
    try {
      byte[] script = m.group(1).getBytes(StandardCharsets.UTF_8);
      byte[] hash = MessageDigest.getInstance("SHA-256").digest(script);
      return Base64.getEncoder().encodeToString(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  boolean has(String path) {
    return FILES.containsKey(path);
  }

  void send(HttpExchange x, String path) throws IOException {
    x.getResponseHeaders().set("Content-Security-Policy", policy);
    if (path.startsWith("/three/") || path.startsWith("/utils/")) {
      x.getResponseHeaders().set("Cache-Control", "private, max-age=86400");
    }
    if (path.equals("/")) {
      try (OutputStream out = Reply.stream(x, "html")) {
        Front.write(out, index, folder);
      }
      return;
    }
    String file = FILES.get(path);
    Reply.bytes(x, 200, Reply.kind(file), bytes(file));
  }

  private static byte[] bytes(String file) throws IOException {
    try (InputStream in = Page.class.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks " + file);
      }
      return in.readAllBytes();
    }
  }
}
