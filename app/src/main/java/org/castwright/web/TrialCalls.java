package org.castwright.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.castwright.mesh.MeshException;
import org.castwright.pipeline.JobFile;
import org.castwright.pipeline.Json;
import org.castwright.pipeline.TrialFolder;
import org.castwright.sheet.SheetOptions;
import org.castwright.trial.Answer;
import org.castwright.trial.Calibration;
import org.castwright.trial.Change;
import org.castwright.trial.Note;
import org.castwright.trial.Reading;
import org.castwright.trial.TrialLog;

/** Calls about test casts and the maker's own readings. */
final class TrialCalls {

  private final Shelf shelf;
  private final Line line;
  private final Notebook notebook;
  private final Limits limits;

  TrialCalls(Shelf shelf, Line line, Notebook notebook, Limits limits) {
    this.shelf = shelf;
    this.line = line;
    this.notebook = notebook;
    this.limits = limits;
  }

  List<Route> routes() {
    return List.of(
        new Route("GET", "/api/jobs/{job}/trials", this::log),
        new Route("POST", "/api/jobs/{job}/trials", this::note),
        new Route("POST", "/api/jobs/{job}/trials/{trial}/apply", this::apply),
        new Route("GET", "/api/calibration", this::readings),
        new Route("POST", "/api/calibration", this::read),
        new Route("DELETE", "/api/calibration/{reading}", this::strike),
        new Route("GET", "/api/calibration/own", this::own));
  }

  private static String today() {
    return LocalDate.now(ZoneId.systemDefault()).toString();
  }

  private <T> T body(HttpExchange x, Class<T> type, String what) throws IOException {
    try {
      T value = Json.read(Ask.text(x, limits.jsonBytes()), type);
      if (value == null) {
        throw new Refused(400, what + " is one JSON object.");
      }
      return value;
    } catch (JsonProcessingException e) {
      // what the records themselves say is meant for people; the parser's words are not
      boolean ours = e.getCause() instanceof IllegalArgumentException;
      throw new Refused(
          400, ours ? e.getCause().getMessage() : what + " lacks an entry or has a wrong one.");
    }
  }

  private void log(HttpExchange x, Map<String, String> parts) throws IOException {
    Reply.json(x, 200, notebook.log(parts.get("job")));
  }

  /** What is sent of a test cast. */
  record Seen(String printer, List<Note> notes) {}

  private void note(HttpExchange x, Map<String, String> parts) throws IOException {
    Seen seen = body(x, Seen.class, "A trial");
    if (seen.notes() == null || seen.notes().isEmpty()) {
      throw new Refused(400, "A trial needs at least one note of what happened.");
    }
    try {
      TrialFolder.Noted n = notebook.note(parts.get("job"), today(), seen.printer(), seen.notes());
      Reply.json(x, 201, n);
    } catch (MeshException | IllegalArgumentException e) {
      throw new Refused(422, e.getMessage());
    }
  }

  /**
   * Which changes are taken over.
   *
   * @param note index of the note
   * @param change index among those of its answer
   */
  record Pick(int note, int change) {}

  /** What is sent to apply changes. */
  record Picks(List<Pick> changes) {}

  private void apply(HttpExchange x, Map<String, String> parts) throws IOException {
    Picks picks = body(x, Picks.class, "The choice of changes");
    String name = parts.get("job");
    Path dir = shelf.job(name);
    int trial = number(parts.get("trial"));
    TrialLog log = notebook.log(name);
    if (trial >= log.trials().size()) {
      throw new Refused(404, "There is no such trial of this job.");
    }
    List<Change> changes = changes(log.trials().get(trial), picks);
    try {
      JobFile.Job job = TrialFolder.changed(dir, changes);
      Order order =
          new Order(
              Path.of(job.model()),
              job.options(),
              SheetOptions.DEFAULT,
              new Order.Answering(name, trial, changes),
              null);
      Reply.json(x, 202, line.add(order, name.replaceAll("-\\d+$", "")).status());
    } catch (MeshException | IllegalArgumentException e) {
      throw new Refused(422, e.getMessage());
    }
  }

  private static List<Change> changes(TrialLog.Trial trial, Picks picks) {
    List<Change> out = new ArrayList<>();
    for (Pick p : picks.changes() == null ? List.<Pick>of() : picks.changes()) {
      boolean there = p.note() >= 0 && p.note() < trial.answers().size();
      Answer a = there ? trial.answers().get(p.note()) : null;
      if (a == null || p.change() < 0 || p.change() >= a.changes().size()) {
        throw new Refused(400, "The trial has no such change.");
      }
      out.add(a.changes().get(p.change()));
    }
    if (out.isEmpty()) {
      throw new Refused(400, "Choose at least one change; without one the mold stays as it is.");
    }
    return out;
  }

  private static int number(String s) {
    if (!s.matches("\\d{1,6}")) {
      throw new Refused(404, "There is no such entry.");
    }
    return Integer.parseInt(s);
  }

  private void readings(HttpExchange x, Map<String, String> parts) throws IOException {
    Reply.json(x, 200, notebook.calibration());
  }

  private void read(HttpExchange x, Map<String, String> parts) throws IOException {
    Calibration more = body(x, Calibration.class, "A list of readings");
    List<Reading> dated =
        more.readings().stream()
            .map(
                r ->
                    new Reading(
                        r.kind(),
                        r.material(),
                        Notebook.named(r.printer()),
                        r.process(),
                        r.drawnMm(),
                        r.gotMm(),
                        r.fit(),
                        r.from(),
                        today()))
            .toList();
    Reply.json(x, 201, notebook.add(dated));
  }

  private void strike(HttpExchange x, Map<String, String> parts) throws IOException {
    int of = number(Ask.query(x).getOrDefault("of", ""));
    Reply.json(x, 200, notebook.strike(number(parts.get("reading")), of));
  }

  private void own(HttpExchange x, Map<String, String> parts) throws IOException {
    Map<String, String> q = Ask.query(x);
    Calibration.Own own =
        notebook
            .calibration()
            .of(
                q.getOrDefault("material", ""),
                Notebook.named(q.get("printer")),
                q.getOrDefault("process", "fdm"));
    Reply.json(x, 200, own);
  }
}
