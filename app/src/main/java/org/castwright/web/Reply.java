package org.castwright.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.castwright.pipeline.Json;

/** Writes answers, each with the headers that keep a page to itself. */
final class Reply {

  private static final Map<String, String> TYPES =
      Map.ofEntries(
          Map.entry("html", "text/html; charset=utf-8"),
          Map.entry("css", "text/css; charset=utf-8"),
          Map.entry("js", "text/javascript; charset=utf-8"),
          Map.entry("svg", "image/svg+xml"),
          Map.entry("json", "application/json"),
          Map.entry("txt", "text/plain; charset=utf-8"),
          Map.entry("png", "image/png"),
          Map.entry("pdf", "application/pdf"),
          Map.entry("glb", "model/gltf-binary"),
          Map.entry("stl", "model/stl"),
          Map.entry("3mf", "model/3mf"),
          Map.entry("zip", "application/zip"));

  private Reply() {}

  /** The words of an error. */
  record Problem(String error) {}

  static void json(HttpExchange x, int status, Object value) throws IOException {
    bytes(x, status, "json", Json.line(value).getBytes(StandardCharsets.UTF_8));
  }

  static void bytes(HttpExchange x, int status, String kind, byte[] body) throws IOException {
    head(x, kind);
    boolean none = x.getRequestMethod().equals("HEAD");
    x.sendResponseHeaders(status, none || body.length == 0 ? -1 : body.length);
    if (!none && body.length > 0) {
      x.getResponseBody().write(body);
      // before the rest of a refused request is waited for
      x.getResponseBody().flush();
    }
  }

  static void file(HttpExchange x, Path file) throws IOException {
    head(x, kind(file.getFileName().toString()));
    long size = Files.size(file);
    x.sendResponseHeaders(200, size == 0 ? -1 : size);
    try (InputStream in = Files.newInputStream(file);
        OutputStream out = x.getResponseBody()) {
      in.transferTo(out);
    }
  }

  /** A whole folder as it is read, so that no second copy is needed. */
  static void zip(HttpExchange x, Path dir) throws IOException {
    String name = dir.getFileName().toString();
    List<Path> files;
    try (Stream<Path> all = Files.walk(dir)) {
      files = all.filter(Files::isRegularFile).sorted().toList();
    }
    try (OutputStream out = attached(x, "zip", name + ".zip");
        ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Path f : files) {
        zip.putNextEntry(
            new ZipEntry(name + "/" + dir.relativize(f).toString().replace('\\', '/')));
        Files.copy(f, zip);
      }
    }
  }

  /** Headers of an answer whose body is written as it is made. */
  static OutputStream stream(HttpExchange x, String kind) throws IOException {
    head(x, kind);
    x.sendResponseHeaders(200, 0);
    return x.getResponseBody();
  }

  /** The same, to be kept as a file of that name. */
  static OutputStream attached(HttpExchange x, String kind, String name) throws IOException {
    x.getResponseHeaders().set("Content-Disposition", "attachment; filename=\"" + name + "\"");
    return stream(x, kind);
  }

  /** What follows the last dot of a name, in lower case; empty if there is none. */
  static String kind(String name) {
    int dot = name.lastIndexOf('.');
    return dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
  }

  static boolean known(String kind) {
    return TYPES.containsKey(kind);
  }

  private static void head(HttpExchange x, String kind) {
    Headers h = x.getResponseHeaders();
    h.set("Content-Type", TYPES.getOrDefault(kind, "application/octet-stream"));
    h.set("X-Content-Type-Options", "nosniff");
    h.set("Referrer-Policy", "no-referrer");
    h.set("Cross-Origin-Resource-Policy", "same-origin");
    h.set("Cross-Origin-Opener-Policy", "same-origin");
    h.set("X-Frame-Options", "DENY");
    if (!h.containsKey("Content-Security-Policy")) {
      h.set("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'");
    }
    if (!h.containsKey("Cache-Control")) {
      h.set("Cache-Control", "no-store");
    }
  }
}
