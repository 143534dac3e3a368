package org.castwright.pipeline;

import org.castwright.geom.Vec3;
import org.castwright.plan.MoldOptions;
import org.castwright.proof.ProofLimits;

/**
 * Everything a job needs besides the model file and the output folder.
 *
 * @param model how the file is taken
 * @param mold what is asked of the mold
 * @param bed room of the printer, mm
 * @param wedgeDeg ° of the thinnest wedge that the proof lets a piece have along its shut-off faces
 */
public record JobOptions(ModelOptions model, MoldOptions mold, Vec3 bed, double wedgeDeg) {

  /** A common desktop filament printer: 220 × 220 × 250 mm; common practice, no source. */
  public static final JobOptions DEFAULT =
      new JobOptions(ModelOptions.DEFAULT, MoldOptions.DEFAULT, new Vec3(220, 220, 250));

  /** With the proof's usual limit for wedges. */
  public JobOptions(ModelOptions model, MoldOptions mold, Vec3 bed) {
    this(model, mold, bed, ProofLimits.DEFAULT.wedgeDegrees());
  }

  /** Checks bed and wedge; the message says what is allowed. */
  public JobOptions {
    if (!(wedgeDeg >= 0 && wedgeDeg <= 90)) {
      throw new IllegalArgumentException("the thinnest wedge must be 0 to 90 degrees");
    }
    if (!(bed.x() > 0 && bed.y() > 0 && bed.z() > 0)) {
      throw new IllegalArgumentException("the printer's bed must be above 0 mm on each side");
    }
  }
}
