package org.castwright.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.castwright.geom.LengthUnit;
import org.castwright.geom.Vec3;
import org.castwright.material.Materials;
import org.castwright.mesh.MeshException;
import org.castwright.pipeline.CalibrationFile;
import org.castwright.pipeline.JobOptions;
import org.castwright.pipeline.ModelOptions;
import org.castwright.pipeline.Up;
import org.castwright.pipeline.WishesFile;
import org.castwright.plan.BlockShape;
import org.castwright.plan.Closing;
import org.castwright.plan.GateEnd;
import org.castwright.plan.KeyShape;
import org.castwright.plan.MoldOptions;
import org.castwright.plan.Openings;
import org.castwright.plan.PiecePull;
import org.castwright.plan.Pour;
import org.castwright.plan.PrintProcess;
import org.castwright.repair.HealMode;
import org.castwright.seams.Wishes;
import org.castwright.sheet.Paper;
import org.castwright.sheet.SheetOptions;
import org.castwright.sheet.Units;
import org.castwright.trial.Calibration;

/** Reads an order; what is not said takes the value that the command line would take. */
final class OrderReader {

  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final Set<String> KNOWN =
      Set.of(
          "name",
          "model",
          "material",
          "size_mm",
          "scale",
          "units",
          "up",
          "heal",
          "remesh_cell_mm",
          "fill_voids",
          "pieces",
          "pull",
          "pulls",
          "wishes",
          "leave_mm3",
          "block_out_mm3",
          "mold_strain_percent",
          "wedge_deg",
          "block",
          "closing",
          "keys",
          "key_count",
          "pour",
          "process",
          "wall_mm",
          "clearance_mm",
          "shrink_percent",
          "release_mm",
          "allow_caught",
          "gate_end",
          "gate_at",
          "vents_at",
          "gate_mm",
          "vent_mm",
          "printer",
          "bed_mm",
          "paper",
          "sheet_units");

  private final JsonNode json;
  private final int threads;

  private OrderReader(JsonNode json, int threads) {
    this.json = json;
    this.threads = threads;
  }

  /** An order before its model is found. */
  record Wish(String name, String model, String printer, JobOptions options, SheetOptions sheet) {

    /** With what is known of material and printer, where it says nothing else. */
    Wish using(Calibration own) {
      JobOptions o = options;
      return new Wish(
          name,
          model,
          printer,
          new JobOptions(
              o.model(), CalibrationFile.use(own, printer, o.mold()), o.bed(), o.wedgeDeg()),
          sheet);
    }

    Order with(Path file) {
      return new Order(file, options, sheet);
    }
  }

  /**
   * Reads an order.
   *
   * @throws Refused if it is no object, or says something unknown or out of range
   */
  static Wish read(String text, int threads) {
    try {
      JsonNode json = MAPPER.readTree(text);
      if (json == null || !json.isObject()) {
        throw new Refused(400, "An order is one JSON object.");
      }
      json.fieldNames()
          .forEachRemaining(
              f -> {
                if (!KNOWN.contains(f)) {
                  throw new Refused(400, "An order has no entry '" + Shelf.harmless(f) + "'.");
                }
              });
      return new OrderReader(json, threads).wish();
    } catch (JsonProcessingException e) {
      throw new Refused(400, "The order is no JSON.");
    } catch (IllegalArgumentException e) {
      throw new Refused(400, e.getMessage());
    }
  }

  private Wish wish() {
    String model = text("model", "");
    if (model.isEmpty()) {
      throw new Refused(400, "An order names its model.");
    }
    String name = text("name", model);
    Paper paper = choice("paper", Paper.class, SheetOptions.DEFAULT.paper());
    Units units = choice("sheet_units", Units.class, SheetOptions.DEFAULT.units());
    double wedge = number("wedge_deg", JobOptions.DEFAULT.wedgeDeg());
    JobOptions options = new JobOptions(model(), mold(), bed(), wedge);
    return new Wish(
        name, model, text("printer", "").strip(), options, new SheetOptions(paper, units));
  }

  private ModelOptions model() {
    ModelOptions d = ModelOptions.DEFAULT;
    HealMode heal = choice("heal", HealMode.class, d.repair().mode());
    return new ModelOptions(
        units(d.units()),
        number("size_mm", 0),
        number("scale", 1),
        Up.of(text("up", "z")),
        d.repair()
            .withMode(heal)
            .withFillVoids(json.path("fill_voids").asBoolean(false))
            .withRemeshCell(number("remesh_cell_mm", 0)));
  }

  private LengthUnit units(LengthUnit otherwise) {
    String wanted = text("units", otherwise.symbol());
    for (LengthUnit u : LengthUnit.values()) {
      if (u.symbol().equals(wanted)) {
        return u;
      }
    }
    throw new Refused(400, "Units are mm, cm, m or in.");
  }

  private MoldOptions mold() {
    MoldOptions d = MoldOptions.DEFAULT;
    String material = text("material", d.material());
    Materials.of(material);
    return d.with()
        .material(material)
        .pieces(pieces(d.pieces()))
        .pull(vector("pull"))
        .pulls(pulls())
        .wishes(wishes())
        .block(choice("block", BlockShape.class, d.block()))
        .closing(choice("closing", Closing.class, d.closing()))
        .keyShape(choice("keys", KeyShape.class, d.keyShape()))
        .keyCount((int) number("key_count", d.keyCount()))
        .pour(choice("pour", Pour.class, d.pour()))
        .process(choice("process", PrintProcess.class, d.process()))
        .wallMm(number("wall_mm", d.wallMm()))
        .clearanceMm(number("clearance_mm", d.clearanceMm()))
        .shrinkPercent(shrink())
        .releaseMm(number("release_mm", d.releaseMm()))
        .leaveMm3(number("leave_mm3", d.leaveMm3()))
        .blockOutMm3(blockOut(d.blockOutMm3()))
        .moldStrain(number("mold_strain_percent", 100 * d.moldStrain()) / 100)
        .allowCaught(json.path("allow_caught").asBoolean(false))
        .openings(openings())
        .threads(threads)
        .build();
  }

  private double blockOut(double otherwise) {
    return text("block_out_mm3", "").equals("auto")
        ? otherwise
        : number("block_out_mm3", otherwise);
  }

  private int pieces(int otherwise) {
    return text("pieces", "").equals("auto")
        ? MoldOptions.MOST_PIECES
        : (int) number("pieces", otherwise);
  }

  /** The pulls of single pieces. */
  private List<PiecePull> pulls() {
    List<PiecePull> out = new ArrayList<>();
    for (JsonNode p : list("pulls")) {
      JsonNode piece = p.path("piece");
      if (!piece.isInt() || piece.asInt() < 1 || piece.asInt() > MoldOptions.MOST_PIECES) {
        throw new Refused(400, "A pull names its piece, 1 to 8.");
      }
      out.add(new PiecePull(piece.asInt(), vector("direction", p.path("direction"))));
    }
    return out;
  }

  private Wishes wishes() {
    JsonNode n = json.path("wishes");
    if (n.isMissingNode() || n.isNull()) {
      return Wishes.NONE;
    }
    try {
      return WishesFile.parse(n.toString(), "the wishes");
    } catch (MeshException e) {
      throw new Refused(400, e.getMessage());
    }
  }

  private JsonNode list(String field) {
    JsonNode n = json.path(field);
    if (!n.isMissingNode() && !n.isNull() && !n.isArray()) {
      throw new Refused(400, "'" + field + "' takes a list.");
    }
    return n;
  }

  /** One number for all axes of the model, or one for each. */
  private Vec3 shrink() {
    if (!json.hasNonNull("shrink_percent")) {
      return null;
    }
    if (json.path("shrink_percent").isArray()) {
      return vector("shrink_percent");
    }
    double s = number("shrink_percent", 0);
    return new Vec3(s, s, s);
  }

  private Vec3 bed() {
    Vec3 bed = vector("bed_mm");
    return bed == null ? JobOptions.DEFAULT.bed() : bed;
  }

  private Openings openings() {
    List<Vec3> vents = new ArrayList<>();
    for (JsonNode v : list("vents_at")) {
      vents.add(vector("vents_at", v));
    }
    return new Openings(
        vector("gate_at"),
        vents,
        choice("gate_end", GateEnd.class, GateEnd.TOP),
        number("gate_mm", 0),
        number("vent_mm", 0));
  }

  private Vec3 vector(String field) {
    JsonNode n = json.path(field);
    return n.isMissingNode() || n.isNull() ? null : vector(field, n);
  }

  private static Vec3 vector(String field, JsonNode n) {
    if (!n.isArray()
        || n.size() != 3
        || !n.get(0).isNumber()
        || !n.get(1).isNumber()
        || !n.get(2).isNumber()) {
      throw new Refused(400, "'" + field + "' takes three numbers.");
    }
    return new Vec3(n.get(0).asDouble(), n.get(1).asDouble(), n.get(2).asDouble());
  }

  private String text(String field, String otherwise) {
    JsonNode n = json.path(field);
    return n.isTextual() ? n.asText() : otherwise;
  }

  private double number(String field, double otherwise) {
    JsonNode n = json.path(field);
    if (n.isMissingNode() || n.isNull() || (n.isTextual() && n.asText().isEmpty())) {
      return otherwise;
    }
    if (!n.isNumber() || !Double.isFinite(n.asDouble())) {
      throw new Refused(400, "'" + field + "' takes a number.");
    }
    return n.asDouble();
  }

  private <E extends Enum<E>> E choice(String field, Class<E> type, E otherwise) {
    String wanted = text(field, "");
    if (wanted.isEmpty()) {
      return otherwise;
    }
    for (E e : type.getEnumConstants()) {
      if (e.name().toLowerCase(Locale.ROOT).equals(wanted)) {
        return e;
      }
    }
    throw new Refused(400, "'" + field + "' has no choice '" + Shelf.harmless(wanted) + "'.");
  }
}
