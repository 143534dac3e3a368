package org.castwright.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.castwright.coupon.CouponOptions;
import org.castwright.mesh.Shapes;
import org.castwright.meshio.StlWriter;
import org.castwright.pipeline.CouponFolder;
import org.castwright.pipeline.Report;
import org.castwright.progress.Progress;

/** A bench whose maker does no work but holds on until it is told to go on. */
final class Desk implements AutoCloseable, Maker {

  static final Limits SMALL = new Limits(1 << 20, 4096, 3);

  final Path folder;
  final Bench bench;
  final Http http;
  final AtomicInteger atOnce = new AtomicInteger();
  final AtomicInteger mostAtOnce = new AtomicInteger();
  private final CountDownLatch goOn = new CountDownLatch(1);
  private volatile boolean runsOutOfMemory;

  Desk(Path folder) throws IOException {
    this.folder = folder;
    bench = Bench.start(folder, 0, this, SMALL, 1);
    http = new Http(bench);
  }

  void goOn() {
    goOn.countDown();
  }

  void runOutOfMemory() {
    runsOutOfMemory = true;
  }

  @Override
  public Report make(Order order, Path output, Progress progress) throws IOException {
    mostAtOnce.accumulateAndGet(atOnce.incrementAndGet(), Math::max);
    try {
      if (runsOutOfMemory) {
        throw new OutOfMemoryError("as if");
      }
      while (!await()) {
        progress.at("hold", 0.5);
      }
      job(output);
      Report.ProofInfo proof = new Report.ProofInfo(true, java.util.List.of());
      return new Report(
          "0", null, null, null, null, null, null, null, null, null, null, null, null, null, null,
          null, null, null, null, null, null, proof, null, null);
    } finally {
      atOnce.decrementAndGet();
    }
  }

  @Override
  public CouponFolder.Written coupon(CouponOptions options, Path output) throws IOException {
    Files.createDirectories(output);
    Files.writeString(output.resolve("coupon.json"), "{}");
    Files.writeString(output.resolve("key.stl"), "solid");
    return new CouponFolder.Written("0", options, java.util.List.of("key.stl"));
  }

  private boolean await() {
    try {
      return goOn.await(5, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      throw new Progress.CancelledException();
    }
  }

  /** A folder that looks like a job's. */
  static Path job(Path output) throws IOException {
    Files.createDirectories(output.resolve("print"));
    Files.writeString(output.resolve("report.json"), "{\"castwright\":\"0\"}");
    Files.writeString(output.resolve("print/piece-1.stl"), "solid");
    return output;
  }

  /** Puts an egg among the models. */
  String egg() throws IOException {
    Path file = Files.createTempFile("egg", ".stl");
    StlWriter.write(file, Shapes.ellipsoid(24, 17, 11, 12), "egg");
    Http.Answer a = http.call("POST", "/api/models?name=egg.stl", Files.readAllBytes(file));
    Files.delete(file);
    if (a.status() != 201) {
      throw new IOException(a.text());
    }
    return "egg.stl";
  }

  /** Waits until a job says so; fails after some seconds. */
  String until(String job, String... states) throws IOException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (System.nanoTime() < end) {
      String text = http.call("GET", "/api/jobs/" + job).text();
      for (String s : states) {
        if (text.contains("\"state\":\"" + s + "\"")) {
          return text;
        }
      }
      Thread.onSpinWait();
    }
    throw new AssertionError("never " + String.join(" or ", states));
  }

  @Override
  public void close() {
    goOn();
    bench.close();
  }
}
