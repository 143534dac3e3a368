package org.castwright.pipeline;

import org.castwright.geom.Vec3;
import org.castwright.plan.MoldOptions;

/**
 * Everything a job needs besides the model file and the output folder.
 *
 * @param model how the file is taken
 * @param mold what is asked of the mold
 * @param bed room of the printer, mm
 */
public record JobOptions(ModelOptions model, MoldOptions mold, Vec3 bed) {

  /** A common desktop filament printer: 220 × 220 × 250 mm; common practice, no source. */
  public static final JobOptions DEFAULT =
      new JobOptions(ModelOptions.DEFAULT, MoldOptions.DEFAULT, new Vec3(220, 220, 250));

  /** Checks the bed; the message says what is allowed. */
  public JobOptions {
    if (!(bed.x() > 0 && bed.y() > 0 && bed.z() > 0)) {
      throw new IllegalArgumentException("the printer's bed must be above 0 mm on each side");
    }
  }
}
