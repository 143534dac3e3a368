package org.castwright.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.castwright.geom.Vec3;
import org.castwright.mesh.MeshException;
import org.castwright.seams.Mark;
import org.castwright.seams.Region;
import org.castwright.seams.Wish;
import org.castwright.seams.Wishes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The reader and the schema agree on what wishes are. */
class WishesFileTest {

  private static final String ALL =
      """
      {"version": 1, "wishes": [
        {"mark": "no-seam", "box": {"min": [-1, -2, 0.5], "max": [1, 2, 3]}},
        {"mark": "hide", "sphere": {"center": [0, 0, 0], "radius": 2.5}},
        {"mark": "show", "facets": [7, 3]},
        {"mark": "piece", "piece": 2, "facets": []}
      ]}
      """;

  private static boolean schemaTakes(String text) throws IOException {
    try (InputStream in = WishesFile.class.getResourceAsStream("wishes.schema.json")) {
      JsonSchema schema =
          JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
      return schema.validate(new ObjectMapper().readTree(text)).isEmpty();
    }
  }

  @Test
  void readsEveryKind() throws IOException {
    Wishes wishes = WishesFile.parse(ALL, "w.json");
    List<Wish> all = wishes.all();
    assertEquals(4, all.size());
    assertEquals(
        Wish.of(new Region.Box(new Vec3(-1, -2, 0.5), new Vec3(1, 2, 3)), Mark.NO_SEAM),
        all.get(0));
    assertEquals(Wish.of(new Region.Ball(Vec3.ZERO, 2.5), Mark.HIDE), all.get(1));
    assertTrue(all.get(2).region().holds(3, 0, 0, 0));
    assertTrue(all.get(2).region().holds(7, 0, 0, 0));
    assertFalse(all.get(2).region().holds(4, 0, 0, 0));
    assertEquals(2, all.get(3).piece());
    assertTrue(schemaTakes(ALL));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "[] | must be an object",
        "{\"version\": 2, \"wishes\": []} | version",
        "{\"wishes\": []} | version",
        "{\"version\": 1} | must be a list",
        "{\"version\": 1, \"wishes\": [], \"more\": 1} | unknown entry \"more\"",
        "{\"version\": 1, \"wishes\": [{\"mark\": \"show\"}]} | exactly one region",
        "{\"version\": 1, \"wishes\": [{\"mark\": \"glow\", \"facets\": []}]} | mark",
        "{\"version\": 1, \"wishes\": [{\"mark\": \"piece\", \"facets\": []}]} | from 1",
        "{\"version\": 1, \"wishes\": [{\"mark\": \"show\", \"piece\": 1, \"facets\": []}]} | only with",
        "{\"version\": 1, \"wishes\": [{\"mark\": \"show\", \"facets\": [-1]}]} | from 0",
        "{\"version\": 1, \"wishes\": [{\"mark\": \"show\", \"facets\": [1.5]}]} | from 0",
        "{\"version\": 1, \"wishes\": [{\"mark\": \"show\", \"sphere\": {\"center\": [0, 0, 0], \"radius\": 0}}]} | above zero",
        "{\"version\": 1, \"wishes\": [{\"mark\": \"show\", \"sphere\": {\"center\": [0, 0], \"radius\": 1}}]} | three numbers",
        "{\"version\": 1, \"wishes\": [{\"mark\": \"show\", \"box\": {\"min\": [0, 0, 0], \"max\": [1, \"a\", 1]}}]} | needs a number",
        "{\"version\": 1, \"wishes\": [{\"mark\": \"show\", \"box\": {\"min\": [0, 0, 0], \"max\": [1, 1, 1], \"by\": 2}}]} | unknown entry \"by\"",
      })
  void refusesInOneSentenceWhatTheSchemaRefuses(String text, String said) throws IOException {
    MeshException e = assertThrows(MeshException.class, () -> WishesFile.parse(text, "w.json"));
    assertTrue(e.getMessage().startsWith("w.json"), e.getMessage());
    assertTrue(e.getMessage().contains(said), e.getMessage());
    assertFalse(schemaTakes(text));
  }

  @Test
  void refusesWhatNoSchemaCanSay() {
    for (String text :
        List.of(
            "{",
            "",
            "{\"version\": 1, \"version\": 1, \"wishes\": []}",
            "{\"version\": 1, \"wishes\": []} more",
            "{\"version\": 1, \"wishes\": [{\"mark\": \"show\","
                + " \"box\": {\"min\": [2, 0, 0], \"max\": [1, 1, 1]}}]}")) {
      assertThrows(MeshException.class, () -> WishesFile.parse(text, "w.json"), text);
    }
  }

  @Test
  void wishesSpeakOfPiecesAndFacetsThereAre() {
    Wishes wishes = WishesFile.parse(ALL, "w.json");
    wishes.check(2, 8);
    MeshException pieces = assertThrows(MeshException.class, () -> wishes.check(1, 8));
    assertTrue(pieces.getMessage().contains("piece 2 of 1"));
    MeshException facets = assertThrows(MeshException.class, () -> wishes.check(2, 7));
    assertTrue(facets.getMessage().contains("facet 7"));
  }
}
