package org.castwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.castwright.mesh.MeshException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Jobs put in order, also by two pages at once. */
class ShelfCallsTest {

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

  private Set<String> names() throws IOException {
    Set<String> out = new TreeSet<>();
    MAPPER
        .readTree(http.call("GET", "/api/jobs").body())
        .forEach(j -> out.add(j.get("name").asText()));
    return out;
  }

  private String named(String path, String name) throws IOException {
    Http.Answer a = http.post(path, "{\"name\":\"" + name + "\"}");
    return a.status() < 300 ? MAPPER.readTree(a.body()).get("name").asText() : "" + a.status();
  }

  @Test
  void aJobIsRenamedCopiedThrownAwayAndPutBack() throws IOException {
    Desk.job(temp.resolve("one"));
    assertEquals("good-one", named("/api/jobs/one/name", "Good One"));
    assertEquals("copy", named("/api/jobs/good-one/copy", "copy"));
    assertEquals("copy-2", named("/api/jobs/good-one/copy", "copy"));
    assertEquals("409", named("/api/jobs/good-one/name", "copy"));
    assertEquals(Set.of("copy", "copy-2", "good-one"), names());
    assertTrue(Files.exists(temp.resolve("copy-2/print/piece-1.stl")));
    http.call("DELETE", "/api/jobs/copy");
    assertEquals("[{\"name\":\"copy\"}]", http.call("GET", "/api/bin").text());
    Desk.job(temp.resolve("copy"));
    assertEquals("copy-3", named("/api/bin/copy/restore", "x"));
    assertEquals("[]", http.call("GET", "/api/bin").text());
    try (Stream<Path> all = Files.list(temp)) {
      assertTrue(all.noneMatch(f -> f.getFileName().toString().startsWith(".copy-")));
    }
  }

  @Test
  void namesThatLeadAwayAreRefused() throws IOException {
    Desk.job(temp.resolve("one"));
    for (String bad : List.of("models", "coupons", "..", "ä", " ")) {
      String said = named("/api/jobs/one/name", bad);
      assertTrue(said.equals("400") || said.matches("[a-z0-9-]+"), said);
      assertFalse(Set.of("models", "coupons", "..").contains(said), said);
    }
    assertEquals("404", named("/api/jobs/.bin/name", "x"));
    assertEquals("404", named("/api/bin/../restore", "x"));
    assertEquals("404", named("/api/jobs/nothing/copy", "x"));
    assertEquals(400, http.post("/api/jobs/one/copy", "{}").status());
    assertEquals(404, http.call("GET", "/api/coupons/../zip").status());
    assertEquals(404, http.call("GET", "/api/coupons/fdm/files/coupon.json").status());
  }

  @Test
  void aNameThatIsPromisedToAJobIsNotGivenAway() throws IOException {
    Desk.job(temp.resolve("one"));
    http.post("/api/jobs", "{\"model\":\"" + desk.egg() + "\"}");
    desk.until("egg", "running");
    assertEquals("409", named("/api/jobs/one/name", "egg"));
    assertEquals("egg-2", named("/api/jobs/one/copy", "egg"));
    desk.goOn();
    desk.until("egg", "proved");
    assertTrue(names().containsAll(Set.of("egg", "egg-2", "one")));
  }

  /** Between a job's last write and its end it is in line and on the shelf. */
  @Test
  void aJobWhoseFolderStandsBeforeItIsOverIsListedOnce() throws IOException {
    http.post("/api/jobs", "{\"model\":\"" + desk.egg() + "\"}");
    desk.until("egg", "running");
    Desk.job(temp.resolve("egg"));
    JsonNode list = MAPPER.readTree(http.call("GET", "/api/jobs").body());
    assertEquals(1, list.size(), list.toString());
    assertEquals("running", list.get(0).get("state").asText());
    desk.goOn();
    desk.until("egg", "proved");
    assertEquals(1, MAPPER.readTree(http.call("GET", "/api/jobs").body()).size());
  }

  /** Two pages rename, copy, throw away and order at once: nothing is lost, nothing is mixed. */
  @Test
  void twoPagesAtOnceDoNotCorruptAJob() throws Exception {
    desk.goOn();
    String egg = "{\"model\":\"" + desk.egg() + "\",\"name\":\"same\"}";
    int rounds = 12;
    for (int i = 0; i < rounds; i++) {
      Desk.job(temp.resolve("job-" + i));
    }
    ExecutorService pages = Executors.newFixedThreadPool(2);
    for (int i = 0; i < rounds; i++) {
      String job = "/api/jobs/job-" + i;
      int n = i;
      Callable<Integer> rename =
          () -> http.post(job + "/name", "{\"name\":\"x-" + n + "\"}").status();
      Callable<Integer> away = () -> http.call("DELETE", job).status();
      Callable<Integer> order = () -> http.post("/api/jobs", egg).status();
      List<Future<Integer>> both = pages.invokeAll(List.of(rename, away, order, order));
      int renamed = both.get(0).get();
      int binned = both.get(1).get();
      assertTrue((renamed == 200) != (binned == 200), renamed + " and " + binned);
      assertTrue(both.get(2).get() == 202 || both.get(2).get() == 429);
    }
    pages.shutdown();
    int kept = 0;
    for (int i = 0; i < rounds; i++) {
      boolean here = Files.exists(temp.resolve("x-" + i + "/report.json"));
      boolean bin = Files.exists(temp.resolve(".bin/job-" + i + "/report.json"));
      assertTrue(here != bin, "job " + i + " is lost or doubled");
      kept += here ? 1 : 0;
    }
    assertTrue(kept <= rounds);
    JsonNode list = MAPPER.readTree(http.call("GET", "/api/jobs").body());
    Set<String> seen = new TreeSet<>();
    list.forEach(j -> assertTrue(seen.add(j.get("name").asText()), "a name stands twice: " + j));
  }

  @Test
  void readingsOfTwoPagesAreAllKept() throws Exception {
    String reading =
        "{\"readings\":[{\"kind\":\"KEY_FIT\",\"material\":\"\",\"printer\":\"left\","
            + "\"process\":\"fdm\",\"drawn_mm\":0.25,\"got_mm\":null,\"fit\":\"GOOD\","
            + "\"from\":\"coupon\",\"date\":\"\"}]}";
    ExecutorService pages = Executors.newFixedThreadPool(4);
    List<Callable<Integer>> calls = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      calls.add(() -> http.post("/api/calibration", reading).status());
    }
    for (Future<Integer> f : pages.invokeAll(calls)) {
      assertEquals(201, f.get());
    }
    pages.shutdown();
    JsonNode all = MAPPER.readTree(http.call("GET", "/api/calibration").body());
    assertEquals(40, all.get("readings").size());
    assertEquals(409, http.call("DELETE", "/api/calibration/3?of=39").status());
    assertEquals(200, http.call("DELETE", "/api/calibration/3?of=40").status());
    JsonNode own =
        MAPPER.readTree(
            http.call("GET", "/api/calibration/own?material=beeswax&printer=left&process=fdm")
                .body());
    assertEquals(0.25, own.get("clearance_mm").asDouble());
    Http.Answer bad = http.post("/api/calibration", reading.replace("0.25", "-1"));
    assertEquals(400, bad.status());
    assertTrue(bad.text().contains("reading"), bad.text());
    assertEquals(400, http.post("/api/calibration", "{\"readings\":[{}]}").status());
  }

  @Test
  void couponsAreMadeAndFetched() throws IOException {
    Http.Answer a = http.post("/api/coupons", "{\"process\":\"resin\",\"gaps_mm\":null}");
    assertEquals(201, a.status(), a.text());
    assertEquals("resin", MAPPER.readTree(a.body()).get("name").asText());
    assertEquals(200, http.call("GET", "/api/coupons/resin/files/key.stl").status());
    assertEquals(200, http.call("GET", "/api/coupons/resin/zip").status());
    assertEquals(404, http.call("GET", "/api/coupons/resin/files/../../x.stl").status());
    String falling = "{\"process\":\"fdm\",\"gaps_mm\":[0.3,0.2]}";
    assertEquals(400, http.post("/api/coupons", falling).status());
  }

  @Test
  void aSecondBenchInTheSameFolderIsRefused() {
    MeshException e = assertThrows(MeshException.class, () -> new Desk(temp));
    assertTrue(e.getMessage().contains("another bench"), e.getMessage());
  }

  /** What waited goes on after the program was killed; what ran is said to have ended. */
  @Test
  void theLineOutlivesTheServer() throws IOException {
    String egg = "{\"model\":\"" + desk.egg() + "\"}";
    http.post("/api/jobs", egg);
    http.post("/api/jobs", egg);
    desk.until("egg", "running");
    desk.bench.close();
    try (Desk again = new Desk(temp)) {
      assertTrue(again.until("egg", "interrupted").contains("make it again"));
      again.goOn();
      again.until("egg-2", "proved");
      assertTrue(Files.exists(temp.resolve("egg-2/report.json")));
      assertFalse(Files.exists(temp.resolve("egg")));
      try (Stream<Path> left = Files.list(temp.resolve(".line"))) {
        assertEquals(0, left.count());
      }
    }
  }
}
