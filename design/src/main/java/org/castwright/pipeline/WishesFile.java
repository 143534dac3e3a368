package org.castwright.pipeline;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.seams.Mark;
import org.castwright.seams.Region;
import org.castwright.seams.Wish;
import org.castwright.seams.Wishes;

/**
 * Reads and writes the user's wishes for the seams: the format of {@code wishes.schema.json}, which
 * lies beside this class. Unknown entries, doubled entries and numbers out of range are errors,
 * each told in one sentence that names the wish.
 */
public final class WishesFile {

  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  /** Of the wishes in the folder of a job, ready to be given to another. */
  static final String NAME = "wishes.json";

  static final int VERSION = 1;
  private static final List<String> REGIONS = List.of("box", "sphere", "facets");

  private WishesFile() {}

  /**
   * Reads wishes from a file.
   *
   * @throws MeshException if the file does not hold wishes
   */
  public static Wishes read(Path file) throws IOException {
    return parse(Files.readString(file), file.toString());
  }

  /** Writes what {@link #read} reads: the same wishes, to the last digit. */
  static void write(Path file, Wishes wishes) throws IOException {
    Files.writeString(file, Json.write(wishes));
  }

  /**
   * Reads wishes from text.
   *
   * @param name of the text, for error messages
   * @throws MeshException if the text does not hold wishes
   */
  public static Wishes parse(String text, String name) {
    JsonNode root;
    try {
      root = MAPPER.readTree(text);
    } catch (JsonProcessingException e) {
      throw new MeshException(name + " is not JSON: " + e.getOriginalMessage() + ".", e);
    }
    return parse(root, name);
  }

  static Wishes parse(JsonNode root, String name) {
    only(root, Set.of("version", "wishes"), name);
    JsonNode version = root.get("version");
    if (version == null || !version.isInt() || version.intValue() != VERSION) {
      throw new MeshException(name + ": \"version\" must be " + VERSION + ".");
    }
    JsonNode list = root.get("wishes");
    if (list == null || !list.isArray()) {
      throw new MeshException(name + ": \"wishes\" must be a list.");
    }
    List<Wish> wishes = new ArrayList<>();
    for (JsonNode node : list) {
      wishes.add(wish(node, name + ": wish " + (wishes.size() + 1)));
    }
    return new Wishes(wishes);
  }

  private static Wish wish(JsonNode node, String where) {
    only(node, Set.of("mark", "piece", "box", "sphere", "facets"), where);
    Mark mark = mark(node.get("mark"), where);
    int piece = 0;
    if (mark == Mark.PIECE) {
      piece = whole(node.get("piece"), 1, where + ": \"piece\" must be a whole number from 1.");
    } else if (node.has("piece")) {
      throw new MeshException(where + ": \"piece\" goes only with the mark \"piece\".");
    }
    return new Wish(region(node, where), mark, piece);
  }

  private static Mark mark(JsonNode node, String where) {
    String text = node == null ? "" : node.asText();
    return switch (text) {
      case "no-seam" -> Mark.NO_SEAM;
      case "hide" -> Mark.HIDE;
      case "show" -> Mark.SHOW;
      case "piece" -> Mark.PIECE;
      default ->
          throw new MeshException(
              where + ": \"mark\" must be \"no-seam\", \"hide\", \"show\" or \"piece\".");
    };
  }

  private static Region region(JsonNode node, String where) {
    List<String> named = REGIONS.stream().filter(node::has).toList();
    if (named.size() != 1) {
      throw new MeshException(
          where + ": name exactly one region, \"box\", \"sphere\" or \"facets\".");
    }
    JsonNode region = node.get(named.get(0));
    return switch (named.get(0)) {
      case "box" -> box(region, where + ": box");
      case "sphere" -> sphere(region, where + ": sphere");
      default -> painted(region, where);
    };
  }

  private static Region box(JsonNode node, String where) {
    only(node, Set.of("min", "max"), where);
    Vec3 min = point(node.get("min"), where + ": \"min\"");
    Vec3 max = point(node.get("max"), where + ": \"max\"");
    if (min.x() > max.x() || min.y() > max.y() || min.z() > max.z()) {
      throw new MeshException(where + ": no coordinate of \"min\" may be above that of \"max\".");
    }
    return new Region.Box(min, max);
  }

  private static Region sphere(JsonNode node, String where) {
    only(node, Set.of("center", "radius"), where);
    Vec3 center = point(node.get("center"), where + ": \"center\"");
    double radius = number(node.get("radius"), where + ": \"radius\"");
    if (radius <= 0) {
      throw new MeshException(where + ": \"radius\" must be above zero.");
    }
    return new Region.Ball(center, radius);
  }

  private static Region painted(JsonNode node, String where) {
    String rule = where + ": \"facets\" must be a list of whole numbers from 0.";
    if (!node.isArray()) {
      throw new MeshException(rule);
    }
    int[] facets = new int[node.size()];
    for (int i = 0; i < facets.length; i++) {
      facets[i] = whole(node.get(i), 0, rule);
    }
    return new Region.Painted(facets);
  }

  private static Vec3 point(JsonNode node, String where) {
    if (node == null || !node.isArray() || node.size() != 3) {
      throw new MeshException(where + " must be three numbers, mm.");
    }
    return new Vec3(
        number(node.get(0), where), number(node.get(1), where), number(node.get(2), where));
  }

  private static double number(JsonNode node, String where) {
    if (node == null || !node.isNumber() || !Double.isFinite(node.doubleValue())) {
      throw new MeshException(where + " needs a number, mm.");
    }
    return node.doubleValue();
  }

  private static int whole(JsonNode node, int least, String rule) {
    if (node == null || !node.isInt() || node.intValue() < least) {
      throw new MeshException(rule);
    }
    return node.intValue();
  }

  private static void only(JsonNode node, Set<String> names, String where) {
    if (node == null || !node.isObject()) {
      throw new MeshException(where + " must be an object in braces.");
    }
    for (Iterator<String> i = node.fieldNames(); i.hasNext(); ) {
      String name = i.next();
      if (!names.contains(name)) {
        throw new MeshException(
            where
                + ": unknown entry \""
                + name
                + "\"; known are "
                + String.join(", ", names.stream().sorted().toList())
                + ".");
      }
    }
  }
}
