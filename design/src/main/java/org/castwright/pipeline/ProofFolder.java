package org.castwright.pipeline;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.mesh.TriMesh;
import org.castwright.meshio.MeshReader;
import org.castwright.proof.ProofInput;
import org.castwright.proof.ProofLimits;

/** Reads a written mold folder back for the proof. */
public final class ProofFolder {

  /** What reports of earlier versions do not say: nothing was blocked out. */
  private static final List<Json.Added> ADDED =
      List.of(
          new Json.Added("/blocked_out", null),
          new Json.Added("/pouring/freezing", null),
          new Json.Added("/pouring/heat/pools/in_channels", false));

  private ProofFolder() {}

  /**
   * The bodies and declarations of a folder.
   *
   * @throws MeshException if the folder is not a mold folder or a file is missing or damaged
   */
  public static ProofInput read(Path dir) throws IOException {
    return input(report(dir), file -> MeshReader.read(dir.resolve(file)).mesh());
  }

  /** Where the bodies that a report names are found. */
  interface Bodies {
    TriMesh of(String file) throws IOException;
  }

  /** The declarations of a report, with the bodies it names. */
  static ProofInput input(Report r, Bodies bodies) throws IOException {
    List<ProofInput.Piece> pieces = new ArrayList<>();
    for (Report.PieceFile p : r.pieces()) {
      pieces.add(
          new ProofInput.Piece(
              p.name(), bodies.of(p.file()), vec(p.pull()), bodies.of(p.printFile())));
    }
    String body = r.channelsBody().file();
    TriMesh none = new TriMesh(new double[0], new int[0]);
    return new ProofInput(
        bodies.of(r.block().file()),
        bodies.of(r.casting().file()),
        body == null ? none : bodies.of(body),
        pieces,
        channels(r),
        keys(r),
        List.of(
            new ProofInput.Taken("key clearances", r.volumes().keyClearanceMm3()),
            new ProofInput.Taken("outside features", r.volumes().featuresMm3())),
        limits(r),
        vec(r.pour().up()));
  }

  /**
   * The report of a folder.
   *
   * @throws MeshException if there is none or it cannot be read
   */
  public static Report report(Path dir) throws IOException {
    Path file = dir.resolve("report.json");
    if (!Files.isRegularFile(file)) {
      throw new MeshException(dir + " holds no report.json; name a folder that castwright wrote.");
    }
    try {
      Report r = Json.read(Files.readString(file), Report.class, ADDED);
      if (r == null || r.castwright() == null || r.pieces() == null || r.limits() == null) {
        throw new MeshException(file + " lacks entries; make the mold again.");
      }
      return r;
    } catch (JsonProcessingException e) {
      throw new MeshException(file + " is damaged: " + e.getOriginalMessage() + ".", e);
    }
  }

  private static List<ProofInput.Channel> channels(Report r) {
    List<ProofInput.Channel> out = new ArrayList<>();
    for (Report.ChannelInfo c : r.channels()) {
      List<Vec3> axis = new ArrayList<>();
      for (List<Double> p : c.axis()) {
        axis.add(vec(p));
      }
      out.add(
          new ProofInput.Channel(
              c.name(),
              ProofInput.ChannelKind.valueOf(c.kind().toUpperCase(Locale.ROOT)),
              axis,
              c.boreMm()));
    }
    return out;
  }

  private static List<ProofInput.Key> keys(Report r) {
    List<String> names = r.pieces().stream().map(Report.PieceFile::name).toList();
    return r.keys().stream()
        .map(
            k ->
                new ProofInput.Key(
                    k.name(),
                    vec(k.center()),
                    vec(k.axis()),
                    k.diameterMm() / 2,
                    k.heightMm(),
                    k.clearanceMm(),
                    names.indexOf(k.keyPiece()),
                    names.indexOf(k.socketPiece())))
        .toList();
  }

  private static ProofLimits limits(Report r) {
    return ProofLimits.DEFAULT
        .withRelease(r.limits().releaseMm())
        .withMinimumWall(r.limits().minimumWallMm())
        .withBed(vec(r.limits().bedMm()))
        .withAllowCaught(r.limits().allowCaught())
        .withShakeShare(r.limits().shakeShare())
        .withWedge(r.limits().wedgeDeg())
        .withMinimumWeb(r.limits().minimumWebMm())
        .withCrease(r.limits().creaseMm3())
        .withGates(1);
  }

  private static Vec3 vec(List<Double> v) {
    return new Vec3(v.get(0), v.get(1), v.get(2));
  }
}
