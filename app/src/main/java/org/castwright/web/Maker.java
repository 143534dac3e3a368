package org.castwright.web;

import java.io.IOException;
import java.nio.file.Path;
import org.castwright.coupon.CouponOptions;
import org.castwright.pipeline.CouponFolder;
import org.castwright.pipeline.Report;
import org.castwright.progress.Progress;

/** Makes molds and coupons; the server does not know how. */
public interface Maker {

  /**
   * Makes one mold.
   *
   * @param folder to appear whole or not at all; after a refusal it holds why
   * @throws org.castwright.mesh.MeshException if the model cannot be used
   * @throws org.castwright.plan.CaughtException if it cannot be molded as asked
   */
  Report make(Order order, Path folder, Progress progress) throws IOException;

  /**
   * Makes a set of fit coupons.
   *
   * @param folder to appear whole or not at all
   */
  CouponFolder.Written coupon(CouponOptions options, Path folder) throws IOException;
}
