package org.castwright.pipeline;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.castwright.advice.HeatInfo;
import org.castwright.geom.Vec3;
import org.castwright.heat.MoldMaterial;
import org.castwright.heat.ThermalTable;
import org.castwright.material.Material;
import org.castwright.material.Materials;
import org.castwright.mesh.FacetDistance;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.MeshReader;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.PrintProcess;
import org.castwright.trial.Facts;
import org.castwright.trial.Note;

/** What a written mold says of itself, for the answers to a trial's notes. */
final class TrialFacts {

  /** Facets nearer than this to a noted place, or the nearest, have its draft, mm. */
  private static final double ROUND = 1.5;

  private final Path dir;
  private final Report report;
  private final MoldOptions options;
  private final List<Note> notes;

  private TrialFacts(Path dir, Report report, MoldOptions options, List<Note> notes) {
    this.dir = dir;
    this.report = report;
    this.options = options;
    this.notes = notes;
  }

  /**
   * @throws MeshException if the folder is not a finished mold with its job
   */
  static Facts of(Path dir, String printer, List<Note> notes) throws IOException {
    Report r = ProofFolder.report(dir);
    if (r.pouring() == null) {
      throw new MeshException(dir + " was not finished: its report lacks the pour; make it again.");
    }
    JobFile.Job job = JobFile.readAnyway(dir.resolve(JobFile.NAME));
    return new TrialFacts(dir, r, job.options().mold(), notes).collect(printer);
  }

  private Facts collect(String printer) throws IOException {
    Material m = Materials.find(report.material().id());
    List<Double> size = report.input().sizeMm();
    int longest = 0;
    for (int i = 1; i < 3; i++) {
      longest = size.get(i) > size.get(longest) ? i : longest;
    }
    var holds = report.pouring().pressure();
    var walls = report.pouring().walls();
    return new Facts(
        report.material().id(),
        printer,
        options.process() == PrintProcess.FDM ? "fdm" : "resin",
        report.material().shrinkPercent().get(longest),
        report.material().shrinkPercent(),
        options.clearance(),
        options.closing().name().toLowerCase(java.util.Locale.ROOT),
        report.block().wallMm(),
        walls == null ? null : walls.neededMm(),
        holds == null ? null : holds.closingN(),
        bore("gate", m.gateMm()),
        bore("vent", m.ventMm()),
        mouths(),
        report.pouring().fill().pockets().stream().map(p -> p.top()).toList(),
        size.get(longest) * report.scale().get(longest),
        report.parting().divided(),
        report.limits().releaseMm(),
        options.pieces(),
        options.allowCaught(),
        caught(),
        drafts(),
        air(),
        m.pourC(),
        m.release() == null ? null : m.release().words(),
        wall());
  }

  private Facts.Wall wall() {
    HeatInfo h = report.pouring().heat();
    if (h == null) {
      return null;
    }
    HeatInfo.Wall w = h.wall();
    return new Facts.Wall(
        w.peakC(),
        ThermalTable.mold(h.wallOf()).name(),
        w.limitC(),
        w.limitToC(),
        w.limit(),
        h.airC(),
        h.peakPlace() == null ? (Double) h.peakC() : null,
        ThermalTable.molds().stream()
            .filter(p -> p.printed() && p.limitC() != null && p.limitC().low() > w.peakC())
            .map(MoldMaterial::name)
            .toList());
  }

  private double bore(String kind, double otherwise) {
    return report.channels().stream()
        .filter(c -> c.kind().equals(kind))
        .mapToDouble(Report.ChannelInfo::boreMm)
        .max()
        .orElse(otherwise);
  }

  private List<List<Double>> mouths() {
    List<List<Double>> out = new ArrayList<>();
    report.channels().forEach(c -> out.add(c.axis().get(0)));
    return out;
  }

  private List<Facts.CaughtSpot> caught() {
    return report.survey().caught().stream()
        .map(
            c ->
                new Facts.CaughtSpot(
                    ReportMaker.array(MoldPoints.scaledToMold(report, MoldPoints.vec(c.center()))),
                    c.depthMm(),
                    c.widthMm()))
        .toList();
  }

  private boolean noted(Note.Kind kind) {
    return notes.stream().anyMatch(n -> n.kind() == kind);
  }

  private TriMesh casting() throws IOException {
    return MeshReader.read(dir.resolve(report.casting().file())).mesh();
  }

  private List<Facts.AirAt> air() throws IOException {
    List<Facts.AirAt> out = new ArrayList<>();
    if (!noted(Note.Kind.AIR)) {
      return out;
    }
    AirWay way = new AirWay(casting(), MoldPoints.vec(report.pour().up()));
    for (int i = 0; i < notes.size(); i++) {
      if (notes.get(i).kind() == Note.Kind.AIR) {
        out.add(way.from(i, MoldPoints.vec(notes.get(i).at())));
      }
    }
    return out;
  }

  private List<Facts.DraftAt> drafts() throws IOException {
    List<Facts.DraftAt> out = new ArrayList<>();
    if (!noted(Note.Kind.STUCK)) {
      return out;
    }
    TriMesh casting = casting();
    List<Vec3> pulls = report.pieces().stream().map(p -> MoldPoints.vec(p.pull())).toList();
    for (int i = 0; i < notes.size(); i++) {
      if (notes.get(i).kind() == Note.Kind.STUCK) {
        List<Vec3> normals = around(casting, MoldPoints.vec(notes.get(i).at()));
        out.add(draft(i, normals, pulls));
      }
    }
    return out;
  }

  /** The least draft of the facets there, now and along the pulls that open the model as well. */
  private Facts.DraftAt draft(int note, List<Vec3> normals, List<Vec3> pulls) {
    double now = least(normals, pulls);
    List<Vec3> turned = normals.stream().map(n -> MoldPoints.directionToModel(report, n)).toList();
    List<Double> better = null;
    double most = now;
    for (Report.Alternative a : report.survey().alternatives()) {
      boolean opens =
          a.trappedVolumeMm3() <= report.survey().noiseFloorMm3()
              || a.caughtWidthMm() <= report.limits().releaseMm();
      Vec3 d = MoldPoints.vec(a.direction()).unit();
      double there = least(turned, List.of(d, d.negate()));
      if (opens && !report.parting().divided() && there > most) {
        most = there;
        better = a.direction();
      }
    }
    return new Facts.DraftAt(note, now, better, most);
  }

  private static double least(List<Vec3> normals, List<Vec3> pulls) {
    double least = 90;
    for (Vec3 n : normals) {
      double most = -1;
      for (Vec3 p : pulls) {
        most = Math.max(most, n.dot(p.unit()));
      }
      least = Math.min(least, Math.toDegrees(Math.asin(Math.max(-1, Math.min(1, most)))));
    }
    return least;
  }

  /** Unit normals of the facets near a point. */
  private static List<Vec3> around(TriMesh mesh, Vec3 p) {
    List<Vec3> out = new ArrayList<>();
    int nearest = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int f = 0; f < mesh.triangleCount(); f++) {
      double d = FacetDistance.of(mesh, f, p);
      boolean flat = !(mesh.areaVector(f).length() > 0);
      if (flat) {
        continue;
      }
      if (d <= ROUND) {
        out.add(mesh.areaVector(f).unit());
      }
      if (d < least) {
        least = d;
        nearest = f;
      }
    }
    return out.isEmpty() && nearest >= 0 ? List.of(mesh.areaVector(nearest).unit()) : out;
  }
}
