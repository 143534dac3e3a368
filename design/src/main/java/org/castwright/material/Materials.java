package org.castwright.material;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The material table that ships with the program, and tables of the user's own: a name like {@code
 * my.json:blue-wax} means the entry {@code blue-wax} of that file laid over the table.
 */
public final class Materials {

  private static final MaterialTable SHIPPED = MaterialTable.shipped();

  /** Ends the file's part of a name. */
  private static final String FILE = ".json:";

  private Materials() {}

  /** Every class that ships, also those with gaps. */
  public static List<Material> all() {
    return SHIPPED.materials();
  }

  /** The shipped table with the user's entries over it and after it. */
  public static List<Material> all(Path file) {
    return SHIPPED.with(file).materials();
  }

  /**
   * The material of that name, fit to make a mold for.
   *
   * @param name an id, or {@code FILE.json:id}
   * @throws IllegalArgumentException naming the known ids, or what the table does not know of it
   */
  public static Material of(String name) {
    Material m = find(name);
    if (!m.gaps().isEmpty()) {
      throw new IllegalArgumentException(
          "the table knows no "
              + String.join(" and no ", m.gaps())
              + " of "
              + m.id()
              + "; state it in a file of your own and ask for FILE.json:"
              + m.id());
    }
    return m;
  }

  /** The name by which a material is found from any working folder. */
  public static String reference(String name) {
    int cut = name.indexOf(FILE);
    if (cut < 0) {
      return name;
    }
    int end = cut + FILE.length() - 1;
    return Path.of(name.substring(0, end)).toAbsolutePath().normalize() + name.substring(end);
  }

  /**
   * The material of that name, with or without gaps; one from a file has its {@link #reference} for
   * an id.
   *
   * @throws IllegalArgumentException naming the known ids
   */
  public static Material find(String name) {
    int cut = name.indexOf(FILE);
    MaterialTable table = SHIPPED;
    String id = name;
    if (cut >= 0) {
      id = name.substring(cut + FILE.length());
      table = SHIPPED.with(Path.of(name.substring(0, cut + FILE.length() - 1)));
    }
    String wanted = id;
    List<Material> known = table.materials();
    return known.stream()
        .filter(m -> m.id().equals(wanted))
        .findFirst()
        .map(m -> cut < 0 ? m : m.named(reference(name)))
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no material is called '"
                        + wanted
                        + "'; known are "
                        + known.stream().map(Material::id).collect(Collectors.joining(", "))));
  }
}
