package org.castwright.pipeline;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.advice.Advisor;
import org.castwright.advice.PourAdvice;
import org.castwright.advice.PourJob;
import org.castwright.geom.Vec3;
import org.castwright.material.Material;
import org.castwright.material.Materials;
import org.castwright.mesh.MeshException;
import org.castwright.mold.Mold;
import org.castwright.plan.PrintProcess;
import org.castwright.progress.Progress;
import org.castwright.proof.ProofInput;

/** The pour of a mold as it is written, for its own material and position or for others. */
public final class PourFolder {

  private PourFolder() {}

  /**
   * What is asked of a pour.
   *
   * @param material what is poured
   * @param up against gravity, mold frame
   * @param print how the mold is printed
   * @param order how many and at what price
   * @param cooling how to look at heat
   */
  record Asked(
      Material material,
      Vec3 up,
      PourJob.Print print,
      PourJob.Order order,
      PourJob.Cooling cooling) {

    static Asked of(Mold mold) {
      boolean fdm = mold.plan().options().process() == PrintProcess.FDM;
      return new Asked(
          mold.plan().material(),
          mold.plan().pour().up(),
          fdm ? PourJob.Print.FDM : PourJob.Print.RESIN,
          PourJob.Order.ONE,
          PourJob.Cooling.coarse(mold.plan().options().threads()));
    }
  }

  /**
   * Works out the pour of a folder again; writes nothing.
   *
   * @param material a name as {@link Materials#of} takes it, or null for the mold's own
   * @param up against gravity, mold frame, or null for the mold's own
   * @param cooling how to look at heat
   * @throws MeshException if the folder is not a mold folder or a file is missing or damaged
   * @throws IllegalArgumentException if the material is unknown or up has no direction
   */
  public static PourAdvice advise(
      Path dir,
      String material,
      Vec3 up,
      PourJob.Order order,
      PourJob.Cooling cooling,
      Progress progress)
      throws IOException {
    Report r = ProofFolder.report(dir);
    if (r.pouring() == null) {
      throw new MeshException(dir + " was not finished: its report lacks the pour; make it again.");
    }
    Asked asked =
        new Asked(
            Materials.of(material == null ? r.pouring().material() : material),
            up == null ? vec(r.pour().up()) : up.unit(),
            PourJob.Print.valueOf(r.pouring().print().toUpperCase(Locale.ROOT)),
            order,
            cooling);
    return advise(ProofFolder.read(dir), r, asked, progress);
  }

  static PourAdvice advise(ProofInput in, Report r, Asked asked, Progress progress) {
    List<PourJob.Piece> pieces = new ArrayList<>();
    for (ProofInput.Piece p : in.pieces()) {
      pieces.add(new PourJob.Piece(p.name(), p.mesh(), p.pull()));
    }
    boolean own = asked.material().id().equals(r.material().id());
    PourJob job =
        new PourJob(
            in.casting(),
            in.channelBody(),
            in.block(),
            r.block().shape().equals("contour") ? r.block().wallMm() : Double.POSITIVE_INFINITY,
            pieces,
            bores(r),
            holds(r),
            new PourJob.Sizes(
                vec(r.input().sizeMm()),
                vec(r.scale()),
                own && r.material().shrinkSource().equals(ReportMaker.STATED)),
            asked.material(),
            asked.up(),
            asked.print(),
            asked.order(),
            asked.cooling());
    return Advisor.of(job, progress);
  }

  private static List<PourJob.Bore> bores(Report r) {
    return r.channels().stream()
        .map(
            c ->
                new PourJob.Bore(
                    c.name(),
                    c.kind().equals("gate"),
                    c.axis().stream().map(PourFolder::vec).toList(),
                    c.boreMm(),
                    c.mouthMm()))
        .toList();
  }

  private static PourJob.Holds holds(Report r) {
    for (String kind : List.of("band-groove", "bolt-hole", "clamp-seat")) {
      int n = (int) r.features().stream().filter(f -> f.kind().equals(kind)).count();
      if (n > 0) {
        return new PourJob.Holds(kind.substring(0, kind.indexOf('-')), n);
      }
    }
    return new PourJob.Holds("none", 0);
  }

  private static Vec3 vec(List<Double> v) {
    return new Vec3(v.get(0), v.get(1), v.get(2));
  }
}
