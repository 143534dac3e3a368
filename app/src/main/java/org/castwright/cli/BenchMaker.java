package org.castwright.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.castwright.coupon.CouponOptions;
import org.castwright.pipeline.Artist;
import org.castwright.pipeline.CouponFolder;
import org.castwright.pipeline.MoldJob;
import org.castwright.pipeline.Report;
import org.castwright.pipeline.TrialFolder;
import org.castwright.plan.CaughtException;
import org.castwright.progress.Progress;
import org.castwright.solid.SolidKernel;
import org.castwright.web.Maker;
import org.castwright.web.Order;

/** Makes for the bench what the commands make. */
record BenchMaker(int threads) implements Maker {

  @Override
  public Report make(Order order, Path folder, Progress progress) throws IOException {
    try (SolidKernel kernel = Kernels.warmingFor(order.options().mold())) {
      Artist artist = new MoldArtist(threads, order.sheet());
      if (order.log() != null) {
        artist = TrialFolder.handingOn(artist, order.log());
      }
      MoldJob job = new MoldJob(order.options(), kernel, artist, progress);
      return job.run(order.model(), folder).report();
    } catch (CaughtException e) {
      Refusal.write(e, folder, threads);
      throw e;
    }
  }

  @Override
  public CouponFolder.Written coupon(CouponOptions options, Path folder) throws IOException {
    try (SolidKernel kernel = Kernels.warming()) {
      return CouponFolder.write(folder, options, kernel);
    }
  }
}
