package org.castwright.web;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.castwright.pipeline.MoldJob;

/** What can be asked of the server; {@code openapi.json} describes each call. */
final class Api {

  private final Shelf shelf;
  private final Line line;
  private final Models models;
  private final Limits limits;
  private final int threads;
  private final Notebook notebook;
  private final List<Route> routes = new ArrayList<>();

  Api(Shelf shelf, Line line, Notebook notebook, Maker maker, Limits limits, int threads) {
    this.shelf = shelf;
    this.line = line;
    this.notebook = notebook;
    this.limits = limits;
    this.threads = threads;
    models = new Models(shelf, limits);
    routes.add(new Route("GET", "/api/version", this::version));
    routes.add(new Route("GET", "/api/materials", this::materials));
    routes.add(new Route("GET", "/api/samples", (x, p) -> Reply.json(x, 200, Models.samples())));
    routes.add(new Route("POST", "/api/samples/{sample}", this::sample));
    routes.add(new Route("POST", "/api/models", this::bring));
    routes.add(
        new Route(
            "GET",
            "/api/models/{model}",
            (x, p) -> Reply.json(x, 200, models.known(p.get("model")))));
    routes.add(new Route("GET", "/api/models/{model}/view", this::showModel));
    routes.add(new Route("GET", "/api/jobs", this::jobs));
    routes.add(new Route("POST", "/api/jobs", this::order));
    routes.add(new Route("GET", "/api/jobs/{job}", this::status));
    routes.add(new Route("DELETE", "/api/jobs/{job}", this::discard));
    routes.add(new Route("POST", "/api/jobs/{job}/cancel", this::cancel));
    routes.add(new Route("GET", "/api/jobs/{job}/zip", this::zip));
    routes.add(new Route("GET", "/api/jobs/{job}/files/{path}", this::file));
    routes.addAll(new ShelfCalls(shelf, line, maker, limits).routes());
    routes.addAll(new TrialCalls(shelf, line, notebook, limits).routes());
  }

  List<Route> routes() {
    return routes;
  }

  /** Serves a call. */
  void serve(HttpExchange x) throws IOException {
    String path = x.getRequestURI().getRawPath();
    boolean elsewise = false;
    for (Route r : routes) {
      Map<String, String> parts = r.match(path);
      if (parts != null && r.method().equals(x.getRequestMethod())) {
        r.handler().serve(x, parts);
        return;
      }
      elsewise |= parts != null;
    }
    throw elsewise
        ? new Refused(405, "This call does not take that method.")
        : new Refused(404, "There is no such call.");
  }

  private void version(HttpExchange x, Map<String, String> parts) throws IOException {
    Reply.json(x, 200, Map.of("castwright", MoldJob.VERSION, "folder", shelf.root().toString()));
  }

  private void materials(HttpExchange x, Map<String, String> parts) throws IOException {
    Reply.json(x, 200, MaterialCard.all());
  }

  private void sample(HttpExchange x, Map<String, String> parts) throws IOException {
    Reply.json(x, 201, models.sample(parts.get("sample")));
  }

  private void bring(HttpExchange x, Map<String, String> parts) throws IOException {
    Reply.json(x, 201, models.take(x, Ask.query(x).getOrDefault("name", "")));
  }

  private void showModel(HttpExchange x, Map<String, String> parts) throws IOException {
    models.show(x, parts.get("model"));
  }

  /** A job in the list. */
  record Entry(String name, String state, boolean picture, long changed) {}

  private void jobs(HttpExchange x, Map<String, String> parts) throws IOException {
    List<Entry> out = new ArrayList<>();
    Set<String> inLine = new HashSet<>();
    for (Job j : line.all()) {
      if (!j.over() || !Shelf.isJob(shelf.named(j.name()))) {
        out.add(new Entry(j.name(), j.status().state(), false, System.currentTimeMillis()));
        inLine.add(j.name());
      }
    }
    for (String name : shelf.jobs()) {
      // its folder may have come between the two looks, or may be gone by now
      Path dir = shelf.named(name);
      if (!inLine.contains(name) && Shelf.isJob(dir)) {
        boolean picture = Files.isRegularFile(dir.resolve("pictures/opened.png"));
        boolean refused = Files.isRegularFile(dir.resolve("refusal.json"));
        out.add(new Entry(name, refused ? "refused" : "done", picture, Shelf.modified(dir)));
      }
    }
    Reply.json(x, 200, out);
  }

  private void order(HttpExchange x, Map<String, String> parts) throws IOException {
    OrderReader.Wish wish = OrderReader.read(Ask.text(x, limits.jsonBytes()), threads);
    Path model = shelf.model(wish.model());
    if (!wish.printer().isBlank()) {
      wish = wish.using(notebook.calibration());
    }
    Reply.json(x, 202, line.add(wish.with(model), wish.name()).status());
  }

  private void status(HttpExchange x, Map<String, String> parts) throws IOException {
    Job job = line.find(parts.get("job"));
    if (job != null) {
      Reply.json(x, 200, job.status());
      return;
    }
    Path dir = shelf.job(parts.get("job"));
    boolean refused = Files.isRegularFile(dir.resolve("refusal.json"));
    Reply.json(
        x,
        200,
        new Job.Status(
            dir.getFileName().toString(), refused ? "refused" : "done", "finished", 1, "", 0));
  }

  private void cancel(HttpExchange x, Map<String, String> parts) throws IOException {
    Job job = line.find(parts.get("job"));
    if (job == null) {
      throw new Refused(404, "There is no running job of that name.");
    }
    job.cancel();
    Reply.json(x, 200, job.status());
  }

  private void discard(HttpExchange x, Map<String, String> parts) throws IOException {
    String name = parts.get("job");
    Path dir = shelf.named(name);
    boolean known = line.find(name) != null;
    line.forget(name);
    String binned = known && !Files.exists(dir) ? "" : shelf.discard(name);
    Reply.json(x, 200, new ShelfCalls.Named(binned));
  }

  private void file(HttpExchange x, Map<String, String> parts) throws IOException {
    Reply.file(x, shelf.file(parts.get("job"), parts.get("path")));
  }

  /** The whole folder as it is read, so that no second copy is needed. */
  private void zip(HttpExchange x, Map<String, String> parts) throws IOException {
    Reply.zip(x, shelf.job(parts.get("job")));
  }
}
