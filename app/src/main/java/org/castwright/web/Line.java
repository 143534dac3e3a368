package org.castwright.web;

import java.io.IOException;
import java.nio.file.Files;
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

/** Jobs in line: one runs, the others wait. */
final class Line implements AutoCloseable {

  /** So long a stop waits for the running job to let go, seconds. */
  private static final long PATIENCE = 20;

  private final Shelf shelf;
  private final Maker maker;
  private final Limits limits;
  private final ExecutorService worker;
  private final Map<String, Job> jobs = new LinkedHashMap<>();

  Line(Shelf shelf, Maker maker, Limits limits) {
    this.shelf = shelf;
    this.maker = maker;
    this.limits = limits;
    worker =
        Executors.newSingleThreadExecutor(
            r -> {
              Thread t = new Thread(r, "mold");
              t.setDaemon(true);
              return t;
            });
  }

  /**
   * Puts an order at the end of the line.
   *
   * @param wanted the name it should have; it may get a number
   * @throws Refused if too many wait already
   */
  synchronized Job add(Order order, String wanted) {
    long waiting = jobs.values().stream().filter(j -> j.state() == Job.State.WAITING).count();
    if (waiting >= limits.waiting()) {
      throw new Refused(429, "Too many jobs wait already; let some finish or cancel them.");
    }
    Job job = new Job(free(wanted));
    jobs.put(job.name(), job);
    worker.execute(() -> run(job, order));
    return job;
  }

  private String free(String wanted) {
    String base = Shelf.harmless(wanted).replaceAll("\\.[a-z0-9]+$", "").replace('.', '-');
    if (base.isEmpty() || base.equals(Shelf.MODELS)) {
      base = "job";
    }
    String name = base;
    for (int n = 2; jobs.containsKey(name) || Files.exists(shelf.root().resolve(name)); n++) {
      name = base + "-" + n;
    }
    return name;
  }

  private void run(Job job, Order order) {
    if (!job.begin()) {
      return;
    }
    Path folder = shelf.root().resolve(job.name());
    try {
      Report r = maker.make(order, folder, job);
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
