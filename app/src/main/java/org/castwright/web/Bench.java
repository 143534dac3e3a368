package org.castwright.web;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.castwright.mesh.MeshException;

/** The server. Made with the JDK's own HTTP server. */
public final class Bench implements AutoCloseable {

  /** Requests served at the same time. */
  private static final int WORKERS = 16;

  /** The JDK's name for the seconds after which a request that does not end is dropped. */
  private static final String LONGEST_REQUEST = "sun.net.httpserver.maxReqTime";

  private static final String SECONDS = "600";

  /**
   * The JDK's name for whether an answer's body goes out before its head is acknowledged; else each
   * file of more than 8 kB takes 40 ms longer on a connection that is used again.
   */
  private static final String NO_DELAY = "sun.net.httpserver.nodelay";

  private final HttpServer server;
  private final ExecutorService workers;
  private final Guard guard;
  private final Page page;
  private final Shelf shelf;
  private final Line line;
  private final Api api;

  private Bench(HttpServer server, Shelf shelf, Maker maker, Limits limits, int threads)
      throws IOException {
    this.server = server;
    this.shelf = shelf;
    guard = new Guard(server.getAddress().getPort());
    page = new Page(shelf.root());
    Notebook notebook = new Notebook(shelf);
    line = new Line(shelf, notebook, maker, limits);
    api = new Api(shelf, line, notebook, maker, limits, threads);
    workers =
        Executors.newFixedThreadPool(
            WORKERS,
            r -> {
              Thread t = new Thread(r, "answer");
              t.setDaemon(true);
              return t;
            });
    server.setExecutor(workers);
    server.createContext("/", this::answer);
  }

  /**
   * Starts to listen on this machine's own address.
   *
   * @param folder for models and jobs; made if it is not there
   * @param port to listen on, or 0 for any free one
   * @param threads for one job
   * @throws IOException if the port is taken or the folder cannot be used
   */
  public static Bench start(Path folder, int port, Maker maker, Limits limits, int threads)
      throws IOException {
    Shelf shelf = new Shelf(folder);
    unlessSet(LONGEST_REQUEST, SECONDS);
    unlessSet(NO_DELAY, "true");
    InetSocketAddress address =
        new InetSocketAddress(InetAddress.getByAddress(new byte[] {127, 0, 0, 1}), port);
    try {
      HttpServer server = HttpServer.create(address, 0);
      Bench bench = new Bench(server, shelf, maker, limits, threads);
      server.start();
      WarmUp.begin(bench.port(), bench.guard.token());
      return bench;
    } catch (IOException e) {
      shelf.close();
      throw e;
    }
  }

  private static void unlessSet(String property, String value) {
    if (System.getProperty(property) == null) {
      System.setProperty(property, value);
    }
  }

  public int port() {
    return server.getAddress().getPort();
  }

  /** The address to open, with the token of this start. */
  public String address() {
    return "http://127.0.0.1:" + port() + "/?token=" + guard.token();
  }

  /** The calls as method and path, as in the description. */
  Set<String> calls() {
    Set<String> out = new java.util.TreeSet<>();
    api.routes().forEach(r -> out.add(r.method() + " " + r.path()));
    return out;
  }

  private void answer(HttpExchange x) throws IOException {
    try (x) {
      // else the JDK cuts the connection at the end, under an answer that is still on its way
      Objects.requireNonNull(x.getRequestBody());
      try {
        serve(x);
      } catch (Refused e) {
        Reply.json(x, e.status(), new Reply.Problem(e.getMessage()));
      } catch (MeshException e) {
        Reply.json(x, 422, new Reply.Problem(e.getMessage()));
      } catch (NoSuchFileException e) {
        String words = "It was renamed or thrown away meanwhile; look at the list again.";
        Reply.json(x, 404, new Reply.Problem(words));
      } catch (RuntimeException e) {
        Reply.json(x, 500, new Reply.Problem("Internal error: " + e));
      }
    }
  }

  private void serve(HttpExchange x) throws IOException {
    guard.checkOrigin(x);
    String path = x.getRequestURI().getRawPath();
    String token = Ask.query(x).get("token");
    if (path.equals("/") && token != null) {
      if (!guard.same(token)) {
        throw new Refused(401, "This address is of an earlier start; use the one printed last.");
      }
      // the token goes into a cookie and out of sight
      x.getResponseHeaders().set("Set-Cookie", guard.cookie());
      x.getResponseHeaders().set("Location", "/");
      Reply.bytes(x, 303, "txt", new byte[0]);
      return;
    }
    guard.checkToken(x);
    if (path.startsWith("/api/")) {
      api.serve(x);
    } else if (page.has(path)) {
      if (!x.getRequestMethod().equals("GET")) {
        throw new Refused(405, "Files of the page are only read.");
      }
      page.send(x, path);
    } else {
      throw new Refused(404, "There is no such file.");
    }
  }

  /** Cancels jobs, lets the running one clean up, and stops to listen. */
  @Override
  public void close() {
    line.close();
    server.stop(0);
    workers.shutdownNow();
    try {
      shelf.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
