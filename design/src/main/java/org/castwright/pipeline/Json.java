package org.castwright.pipeline;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/** JSON as castwright writes it: snake_case names, two-space indent, the same on every system. */
public final class Json {

  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
          .enable(SerializationFeature.INDENT_OUTPUT)
          .addModule(new WishesModule())
          .addModule(new TrialModule())
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
          .build();

  private Json() {}

  public static String write(Object value) {
    DefaultIndenter indent = new DefaultIndenter("  ", "\n");
    ObjectWriter writer =
        MAPPER.writer(
            new DefaultPrettyPrinter().withObjectIndenter(indent).withArrayIndenter(null));
    try {
      return writer.writeValueAsString(value) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** As it would be written. */
  static JsonNode tree(Object value) {
    return MAPPER.valueToTree(value);
  }

  /** On one line. */
  public static String line(Object value) {
    try {
      return MAPPER.writer().without(SerializationFeature.INDENT_OUTPUT).writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Reads a value written by {@link #write}; unknown entries are passed over, missing ones are not.
   *
   * @throws JsonProcessingException if the text is not such a value
   */
  public static <T> T read(String text, Class<T> type) throws JsonProcessingException {
    return MAPPER.readValue(text, type);
  }

  /**
   * An entry that earlier versions did not write: its JSON Pointer (RFC 6901), and how it reads. Of
   * a list it is an entry of each of its items.
   */
  record Added(String at, Object value) {}

  /** The same for a value that earlier versions wrote without some entries. */
  static <T> T read(String text, Class<T> type, List<Added> added) throws JsonProcessingException {
    JsonNode tree = MAPPER.readTree(text);
    for (Added entry : added) {
      JsonPointer at = JsonPointer.compile(entry.at());
      if (tree == null) {
        continue;
      }
      JsonNode holder = tree.at(at.head());
      Iterable<JsonNode> all = holder.isArray() ? holder : List.of(holder);
      for (JsonNode one : all) {
        String name = at.last().getMatchingProperty();
        if (one instanceof ObjectNode parent && !parent.has(name)) {
          parent.set(name, MAPPER.valueToTree(entry.value()));
        }
      }
    }
    return MAPPER.treeToValue(tree, type);
  }
}
