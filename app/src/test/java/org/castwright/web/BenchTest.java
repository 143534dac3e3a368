package org.castwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Jobs in line, files and page, as the description of the calls says. */
class BenchTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  @TempDir private Path temp;
  private Desk desk;
  private Http http;

  @BeforeEach
  void open() throws IOException {
    desk = new Desk(temp);
    http = desk.http;
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private String order(String json) throws IOException {
    Http.Answer a = http.post("/api/jobs", json);
    assertEquals(202, a.status(), a.text());
    return MAPPER.readTree(a.body()).get("name").asText();
  }

  @Test
  void oneJobRunsAndTheOthersWait() throws IOException {
    String egg = "{\"model\":\"" + desk.egg() + "\"}";
    assertEquals("egg", order(egg));
    assertEquals("egg-2", order(egg));
    assertEquals("good-egg", order("{\"model\":\"egg.stl\",\"name\":\"Good Egg!\"}"));
    desk.until("egg", "running");
    desk.until("egg-2", "waiting");
    http.call("POST", "/api/jobs/egg-2/cancel");
    desk.until("egg-2", "cancelled");
    desk.goOn();
    assertTrue(desk.until("egg", "proved").contains("checks passed"));
    desk.until("good-egg", "proved");
    assertEquals(1, desk.mostAtOnce.get());
    assertFalse(Files.exists(temp.resolve("egg-2")));
    JsonNode list = MAPPER.readTree(http.call("GET", "/api/jobs").body());
    Set<String> names = new TreeSet<>();
    list.forEach(j -> names.add(j.get("name").asText() + " " + j.get("state").asText()));
    assertEquals(Set.of("egg done", "good-egg done", "egg-2 cancelled"), names);
  }

  @Test
  void aRunningJobIsCancelledAndTheNextOneBegins() throws IOException {
    String egg = "{\"model\":\"" + desk.egg() + "\"}";
    order(egg);
    order(egg);
    desk.until("egg", "running");
    assertEquals(409, http.call("DELETE", "/api/jobs/egg").status());
    http.call("POST", "/api/jobs/egg/cancel");
    assertTrue(desk.until("egg", "cancelled").contains("nothing was written"));
    desk.until("egg-2", "running");
  }

  @Test
  void aModelBroughtEarlierIsKnown() throws IOException {
    String name = desk.egg();
    Http.Answer a = http.call("GET", "/api/models/" + name);
    assertEquals(200, a.status(), a.text());
    JsonNode known = MAPPER.readTree(a.body());
    assertEquals(name, known.get("model").asText());
    assertTrue(known.get("triangles").asInt() > 100, a.text());
    assertEquals(3, known.get("size_mm").size());
    assertTrue(known.get("units").isNull(), "STL states no unit: " + a.text());
    assertEquals(404, http.call("GET", "/api/models/gone.stl").status());
  }

  @Test
  void theLineHasAnEnd() throws IOException {
    String egg = "{\"model\":\"" + desk.egg() + "\"}";
    order(egg);
    desk.until("egg", "running");
    for (int i = 0; i < Desk.SMALL.waiting(); i++) {
      order(egg);
    }
    assertEquals(429, http.post("/api/jobs", egg).status());
  }

  @Test
  void discardedJobsGoToTheBin() throws IOException {
    Desk.job(temp.resolve("old"));
    assertEquals("{\"name\":\"old\"}", http.call("DELETE", "/api/jobs/old").text());
    Desk.job(temp.resolve("old"));
    assertEquals("{\"name\":\"old-2\"}", http.call("DELETE", "/api/jobs/old").text());
    assertTrue(Files.exists(temp.resolve(".bin/old/report.json")));
    assertTrue(Files.exists(temp.resolve(".bin/old-2/report.json")));
    assertEquals(404, http.call("DELETE", "/api/jobs/old").status());
    assertEquals("[]", http.call("GET", "/api/jobs").text());
  }

  @Test
  void jobsOutliveTheServer() throws IOException {
    String name = order("{\"model\":\"" + desk.egg() + "\"}");
    desk.goOn();
    desk.until(name, "proved");
    desk.bench.close();
    try (Desk again = new Desk(temp)) {
      assertTrue(again.http.call("GET", "/api/jobs").text().contains("\"name\":\"egg\""));
      assertTrue(again.http.call("GET", "/api/jobs/egg").text().contains("\"state\":\"done\""));
      assertEquals(200, again.http.call("GET", "/api/jobs/egg/files/report.json").status());
      assertEquals("egg.stl", again.egg().replace("2-", ""));
    }
  }

  @Test
  void stoppingCancelsWhatRuns() throws IOException {
    order("{\"model\":\"" + desk.egg() + "\"}");
    desk.until("egg", "running");
    desk.bench.close();
    assertEquals(0, desk.atOnce.get());
    assertFalse(Files.exists(temp.resolve("egg")));
  }

  @Test
  void theWholeFolderComesAsZip() throws IOException {
    Desk.job(temp.resolve("one"));
    Http.Answer a = http.call("GET", "/api/jobs/one/zip");
    assertEquals(200, a.status());
    Set<String> names = new TreeSet<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(a.body()))) {
      for (var e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        names.add(e.getName());
      }
    }
    assertEquals(Set.of("one/report.json", "one/print/piece-1.stl"), names);
  }

  @Test
  void samplesAndModelsAreShown() throws IOException {
    JsonNode made = MAPPER.readTree(http.call("POST", "/api/samples/medallion").body());
    assertEquals("medallion.stl", made.get("model").asText());
    http.call("POST", "/api/samples/medallion");
    try (var kept = Files.list(temp.resolve("models"))) {
      assertEquals(1, kept.count(), "a sample is kept once");
    }
    Http.Answer glb = http.call("GET", "/api/models/medallion.stl/view");
    assertEquals("glTF", glb.text().substring(0, 4));
    assertEquals(404, http.call("POST", "/api/samples/teapot").status());
  }

  /** OpenAPI 3.1: the description lists exactly the calls there are. */
  @Test
  void theDescriptionIsTrue() throws IOException {
    JsonNode doc = MAPPER.readTree(http.call("GET", "/openapi.json").body());
    assertTrue(doc.get("openapi").asText().startsWith("3.1"));
    Set<String> described = new TreeSet<>();
    doc.get("paths")
        .fields()
        .forEachRemaining(
            path ->
                path.getValue()
                    .fieldNames()
                    .forEachRemaining(
                        m -> described.add(m.toUpperCase(Locale.ROOT) + " " + path.getKey())));
    assertEquals(desk.bench.calls(), described);
    assertEquals(405, http.call("PUT", "/api/jobs").status());
    assertEquals(404, http.call("GET", "/api/nothing").status());
  }

  /** The answers have the entries that the description names. */
  @Test
  void answersLookAsDescribed() throws IOException {
    JsonNode schemas =
        MAPPER.readTree(http.call("GET", "/openapi.json").body()).at("/components/schemas");
    String name = order("{\"model\":\"" + desk.egg() + "\"}");
    check(schemas, "Status", http.call("GET", "/api/jobs/" + name));
    check(schemas, "Entry", http.call("GET", "/api/jobs"));
    check(schemas, "Material", http.call("GET", "/api/materials"));
    check(schemas, "Sample", http.call("GET", "/api/samples"));
    check(schemas, "Model", http.call("POST", "/api/samples/medallion"));
  }

  private static void check(JsonNode schemas, String schema, Http.Answer a) throws IOException {
    JsonNode body = MAPPER.readTree(a.body());
    JsonNode one = body.isArray() ? body.get(0) : body;
    assertEquals(names(schemas.at("/" + schema + "/properties")), names(one), schema);
  }

  private static Set<String> names(JsonNode object) {
    Set<String> out = new TreeSet<>();
    object.fieldNames().forEachRemaining(out::add);
    return out;
  }

  /**
   * What a person needs to begin stands in the page itself, and no name in it is taken for markup.
   */
  @Test
  void theFirstScreenIsInThePage() throws IOException {
    String page = http.call("GET", "/").text();
    for (JsonNode s : MAPPER.readTree(http.call("GET", "/api/samples").body())) {
      assertTrue(page.contains(">" + s.get("title").asText() + "</button>"), page);
    }
    JsonNode materials = MAPPER.readTree(http.call("GET", "/api/materials").body());
    for (JsonNode m : materials) {
      assertTrue(page.contains("<option value=\"" + m.get("id").asText() + "\""), page);
    }
    String wax = "shrinks 2.00 %, poured at 65–90 °C";
    assertEquals("paraffin-wax", materials.get(0).get("id").asText());
    assertTrue(page.contains("role=\"status\">" + wax + "</p>"), page);
    assertFalse(page.contains("<!--"), page);
    try (Desk odd = new Desk(temp.resolve("<b> & \"c\""))) {
      String there = odd.http.call("GET", "/").text();
      assertTrue(there.contains("/&lt;b&gt; &amp; &quot;c&quot;</p>"), there);
    }
  }

  /** Modules are asked for at once, not each when another one names it. */
  @Test
  void thePageNamesAllItsModules() throws IOException {
    Pattern preload = Pattern.compile("<link rel=\"modulepreload\" href=\"([^\"]+)\">");
    Pattern imported = Pattern.compile("(?m)^import .* from \"([^\"]+)\";$");
    Set<String> named = found(preload, "/");
    Set<String> needed = new TreeSet<>();
    Set<String> todo = new TreeSet<>(Set.of("/bench.js"));
    while (!todo.isEmpty()) {
      String module = todo.iterator().next();
      todo.remove(module);
      for (String m : found(imported, module)) {
        if (needed.add(m)) {
          todo.add(m);
        }
      }
    }
    assertEquals(needed, named);
  }

  private Set<String> found(Pattern pattern, String path) throws IOException {
    Set<String> out = new TreeSet<>();
    Matcher m = pattern.matcher(http.call("GET", path).text());
    while (m.find()) {
      out.add(m.group(1));
    }
    return out;
  }

  /** The page and all it refers to come from this server, and nothing refers elsewhere. */
  @Test
  void thePageAsksNobodyElse() throws IOException {
    Pattern address = Pattern.compile("(?:src|href|from|import)\\s*[=( ]?\\s*\"(/[^\"]*)\"");
    Set<String> seen = new TreeSet<>(List.of("/"));
    Set<String> todo = new TreeSet<>(seen);
    while (!todo.isEmpty()) {
      String path = todo.iterator().next();
      todo.remove(path);
      Http.Answer a = http.call("GET", path);
      assertEquals(200, a.status(), path);
      if (path.startsWith("/three/") || path.startsWith("/utils/")) {
        continue;
      }
      String text = a.text().replace("http://www.w3.org/2000/svg", "");
      assertFalse(text.contains("://"), path + " names another server");
      Matcher m = address.matcher(text);
      while (m.find()) {
        if (seen.add(m.group(1))) {
          todo.add(m.group(1));
        }
      }
    }
    assertTrue(
        seen.containsAll(Set.of("/bench.js", "/view.js", "/calls.js", "/style.css")),
        seen.toString());
    assertEquals(200, http.call("GET", "/three/three.module.min.js").status());
    assertEquals(200, http.call("GET", "/utils/BufferGeometryUtils.js").status());
    String policy = http.call("GET", "/").head();
    assertTrue(policy.contains("default-src 'none'") && policy.contains("connect-src 'self'"));
  }
}
