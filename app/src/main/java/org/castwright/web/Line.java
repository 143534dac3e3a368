package org.castwright.web;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.castwright.mesh.MeshException;
import org.castwright.pipeline.Report;
import org.castwright.plan.CaughtException;
import org.castwright.progress.Progress;
import org.castwright.trial.TrialLog;

/** Jobs in line: one runs, the others wait. */
final class Line implements AutoCloseable {

  /** So long a stop waits for the running job to let go, seconds. */
  private static final long PATIENCE = 20;

  private final Shelf shelf;
  private final Maker maker;
  private final Limits limits;
  private final ExecutorService worker;
  private final Map<String, Job> jobs = new LinkedHashMap<>();
  private final LineFolder folder;
  private final Notebook notebook;
  private long number;
  private volatile boolean closing;

  Line(Shelf shelf, Notebook notebook, Maker maker, Limits limits) throws IOException {
    this.shelf = shelf;
    this.notebook = notebook;
    folder = new LineFolder(shelf.root());
    this.maker = maker;
    this.limits = limits;
    worker =
        Executors.newSingleThreadExecutor(
            r -> {
              Thread t = new Thread(r, "mold");
              t.setDaemon(true);
              return t;
            });
    goOn();
  }

  /**
   * Goes on with what an earlier run left in line. What ran when the program ended is not begun
   * again by itself: it may be why it ended.
   */
  private void goOn() throws IOException {
    for (LineFolder.Entry e : folder.left()) {
      Job job = new Job(e.name());
      jobs.put(e.name(), job);
      shelf.keepPromise(e.name());
      number = e.number() + 1;
      if (e.began()) {
        folder.take(e.name());
        shelf.sweepAfter(e.name());
        String words = "The program ended while this ran; make it again.";
        job.end(Job.State.INTERRUPTED, words);
        shelf.release(e.name());
      } else {
        worker.execute(() -> run(job, e));
      }
    }
  }

  /**
   * Puts an order at the end of the line.
   *
   * @param wanted the name it should have; it may get a number
   * @throws Refused if too many wait already
   */
  synchronized Job add(Order order, String wanted) throws IOException {
    long waiting = jobs.values().stream().filter(j -> j.state() == Job.State.WAITING).count();
    if (waiting >= limits.waiting()) {
      throw new Refused(429, "Too many jobs wait already; let some finish or cancel them.");
    }
    Job job = new Job(name(wanted));
    LineFolder.Entry entry = LineFolder.Entry.of(number++, job.name(), order);
    folder.put(entry);
    jobs.put(job.name(), job);
    worker.execute(() -> run(job, entry));
    return job;
  }

  private String name(String wanted) {
    String base = Shelf.harmless(wanted).replaceAll("\\.[a-z0-9]+$", "").replace('.', '-');
    if (base.isEmpty() || base.startsWith("-") || Shelf.KEPT.contains(base)) {
      base = "job";
    }
    return shelf.promise(base);
  }

  private void run(Job job, LineFolder.Entry entry) {
    try {
      if (job.begin()) {
        folder.put(entry.running());
        make(job, entry.order());
      }
      // what a stop of the program cancels stays on the list for the next start
      if (!closing || job.state() != Job.State.CANCELLED) {
        folder.take(job.name());
      }
    } catch (IOException e) {
      job.end(Job.State.FAILED, "The disk refuses: " + e.getMessage());
    } finally {
      shelf.release(job.name());
    }
  }

  private void make(Job job, Order order) throws IOException {
    Path target = shelf.root().resolve(job.name());
    try {
      TrialLog log = notebook.handOn(order.answering(), job.name());
      Report r = maker.make(order.with(log), target, job);
      notebook.applied(order.answering(), job.name());
      long failed = r.proof().checks().stream().filter(c -> !c.passed()).count();
      if (failed == 0) {
        int checks = r.proof().checks().size();
        job.end(Job.State.PROVED, "Proved: all " + checks + " checks passed.");
      } else {
        job.end(Job.State.UNPROVED, "Not proved: " + failed + " checks failed.");
      }
    } catch (Progress.CancelledException e) {
      job.end(Job.State.CANCELLED, "Cancelled; nothing was written.");
    } catch (CaughtException e) {
      job.end(Job.State.REFUSED, e.getMessage());
    } catch (MeshException | IllegalArgumentException e) {
      job.end(Job.State.FAILED, e.getMessage());
    } catch (IOException e) {
      job.end(Job.State.FAILED, "The disk refuses: " + e.getMessage());
    } catch (OutOfMemoryError e) {
      long mb = Runtime.getRuntime().maxMemory() >> 20;
      job.end(
          Job.State.FAILED,
          "The model needs more memory than the "
              + mb
              + " MB allowed: simplify it, or start with CASTWRIGHT_JAVA_OPTIONS=-Xmx8g.");
    } catch (RuntimeException e) {
      job.end(Job.State.FAILED, "Internal error: " + e);
    }
  }

  synchronized Job find(String name) {
    return jobs.get(name);
  }

  synchronized List<Job> all() {
    return new ArrayList<>(jobs.values());
  }

  /** Forgets a job that is over, so that its name is free again. */
  synchronized void forget(String name) {
    Job job = jobs.get(name);
    if (job != null && !job.over()) {
      throw new Refused(409, "This job is not over yet; cancel it first.");
    }
    jobs.remove(name);
  }

  /** Cancels everything and waits for the running job to clean up. */
  @Override
  public void close() {
    closing = true;
    all().forEach(Job::cancel);
    worker.shutdown();
    try {
      if (!worker.awaitTermination(PATIENCE, TimeUnit.SECONDS)) {
        worker.shutdownNow();
      }
    } catch (InterruptedException e) {
      worker.shutdownNow();
      Thread.currentThread().interrupt();
    }
  }
}
