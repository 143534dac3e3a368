package org.castwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a page elsewhere, or somebody who means ill, may send. */
class AttacksTest {

  @TempDir private Path temp;
  private Desk desk;
  private Http http;

  @BeforeEach
  void open() throws IOException {
    desk = new Desk(temp.resolve("jobs"));
    http = desk.http;
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private String token() {
    return desk.bench.address().replaceAll(".*token=", "");
  }

  private Set<String> inFolder() throws IOException {
    Set<String> out = new TreeSet<>();
    try (var all = Files.walk(desk.folder)) {
      all.filter(Files::isRegularFile).forEach(p -> out.add(desk.folder.relativize(p).toString()));
      // tells other benches that this one is open
      out.remove(".lock");
    }
    return out;
  }

  @Test
  void nobodyIsServedWithoutTheToken() throws IOException {
    String host = "Host: " + http.host();
    for (String path : List.of("/", "/bench.js", "/api/version", "/api/jobs", "/openapi.json")) {
      assertEquals(401, http.raw("GET", path, List.of(host), new byte[0]).status(), path);
    }
    for (String wrong :
        List.of("Authorization: Bearer x", "Cookie: castwright-1=x", "Cookie: ;=;")) {
      assertEquals(401, http.raw("GET", "/", List.of(host, wrong), new byte[0]).status(), wrong);
    }
    assertEquals(401, http.raw("GET", "/?token=x", List.of(host), new byte[0]).status());
    assertEquals(200, http.call("GET", "/api/version").status());
  }

  @Test
  void theAddressSetsACookieThatScriptsAndOtherSitesDoNotGet() throws IOException {
    String host = "Host: " + http.host();
    Http.Answer a = http.raw("GET", "/?token=" + token(), List.of(host), new byte[0]);
    assertEquals(303, a.status());
    assertTrue(a.head().contains("HttpOnly") && a.head().contains("SameSite=Strict"), a.head());
    assertTrue(a.head().contains("Location: /\r\n"), a.head());
    String cookie = a.head().replaceAll("(?s).*Set-cookie: ([^;]*);.*", "$1");
    Http.Answer page = http.raw("GET", "/", List.of(host, "Cookie: " + cookie), new byte[0]);
    assertEquals(200, page.status(), cookie);
  }

  @Test
  void everyStartHasATokenOfItsOwn() throws IOException {
    try (Desk other = new Desk(temp.resolve("other"))) {
      assertFalse(other.bench.address().endsWith(token()));
    }
    assertTrue(token().length() >= 43, "256 bits take 43 letters of base 64");
  }

  @Test
  void aNameThatLeadsHereIsNotEnough() throws IOException {
    String bearer = "Authorization: Bearer " + token();
    for (String host :
        List.of("evil.example", "evil.example:" + desk.bench.port(), "127.0.0.1", "127.0.0.1:1")) {
      Http.Answer a =
          http.raw("GET", "/api/version", List.of("Host: " + host, bearer), new byte[0]);
      assertEquals(421, a.status(), host);
    }
    List<String> two = List.of("Host: " + http.host(), "Host: evil.example", bearer);
    assertTrue(http.raw("GET", "/api/version", two, new byte[0]).status() >= 400);
  }

  @Test
  void pagesElsewhereCannotCall() throws IOException {
    List<String> ours = List.of("Host: " + http.host(), "Authorization: Bearer " + token());
    for (String from :
        List.of(
            "Origin: http://evil.example",
            "Origin: null",
            "Origin: http://127.0.0.1:1",
            "Origin: https://" + http.host(),
            "Sec-Fetch-Site: cross-site",
            "Sec-Fetch-Site: same-site")) {
      List<String> headers = new ArrayList<>(ours);
      headers.add(from);
      assertEquals(403, http.raw("GET", "/api/jobs", headers, new byte[0]).status(), from);
    }
    List<String> own = new ArrayList<>(ours);
    own.add("Origin: http://" + http.host());
    own.add("Sec-Fetch-Site: same-origin");
    assertEquals(200, http.raw("GET", "/api/jobs", own, new byte[0]).status());
  }

  @Test
  void noAnswerInvitesOthers() throws IOException {
    for (String path : List.of("/", "/api/version", "/nothing")) {
      String head = http.call("GET", path).head().toLowerCase(java.util.Locale.ROOT);
      assertFalse(head.contains("access-control"), head);
      assertTrue(head.contains("x-content-type-options: nosniff"), head);
      assertTrue(head.contains("referrer-policy: no-referrer"), head);
      assertTrue(head.contains("frame-ancestors 'none'"), head);
      assertTrue(head.contains("cross-origin-resource-policy: same-origin"), head);
      assertFalse(head.contains("unsafe-inline") || head.contains("unsafe-eval"), head);
    }
  }

  @Test
  void otherMachinesReachNothing() throws IOException {
    for (NetworkInterface n : Collections.list(NetworkInterface.getNetworkInterfaces())) {
      for (InetAddress a : Collections.list(n.getInetAddresses())) {
        if (!a.isLoopbackAddress()) {
          try (Socket s = new Socket()) {
            InetSocketAddress to = new InetSocketAddress(a, desk.bench.port());
            assertThrows(IOException.class, () -> s.connect(to, 500), a.toString());
          }
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "../secret.txt",
        "../../secret.txt",
        "print/../../secret.txt",
        "%2e%2e/secret.txt",
        "..%2fsecret.txt",
        "%2e%2e%2f%2e%2e%2fsecret.txt",
        "..%5csecret.txt",
        "..\\secret.txt",
        "/etc/passwd",
        "//etc/passwd",
        "print//piece-1.stl",
        "./report.json",
        "link.txt",
        "out/secret.txt",
        "print",
        "",
        "report.json%00.txt",
        "REPORT.JSON",
        ".hidden.txt"
      })
  void filesOutsideTheJobStayThere(String path) throws IOException {
    Path job = Desk.job(desk.folder.resolve("one"));
    Files.writeString(desk.folder.resolve("secret.txt"), "secret");
    Files.writeString(temp.resolve("secret.txt"), "secret");
    Files.writeString(job.resolve(".hidden.txt"), "secret");
    Files.createSymbolicLink(job.resolve("link.txt"), temp.resolve("secret.txt"));
    Files.createSymbolicLink(job.resolve("out"), temp);
    assertEquals(200, http.call("GET", "/api/jobs/one/files/report.json").status());
    assertEquals(200, http.call("GET", "/api/jobs/one/files/print/piece-1.stl").status());
    Http.Answer a = http.call("GET", "/api/jobs/one/files/" + path);
    assertTrue(a.status() == 404 || a.status() == 400, path + ": " + a.status());
    assertFalse(a.text().contains("secret\n") || a.text().equals("secret"), path);
  }

  @ParameterizedTest
  @ValueSource(strings = {"..", ".", ".bin", "models", "%2e%2e", "one%2f..", "ONE", "-x"})
  void jobsHaveHarmlessNames(String name) throws IOException {
    Desk.job(desk.folder.resolve("one"));
    Files.writeString(desk.folder.resolve("report.json"), "{}");
    assertEquals(404, http.call("GET", "/api/jobs/" + name + "/files/report.json").status(), name);
    assertEquals(404, http.call("DELETE", "/api/jobs/" + name).status(), name);
    assertTrue(Files.exists(desk.folder.resolve("one/report.json")));
  }

  @Test
  void namesOfModelsLeadNowhere() throws IOException {
    byte[] egg = Files.readAllBytes(desk.folder.resolve("models").resolve(desk.egg()));
    for (String name :
        List.of("..%2F..%2Fevil.stl", "C%3A%5Cevil.stl", "%2Fetc%2Fevil.stl", "a%00b.stl")) {
      assertEquals(201, http.call("POST", "/api/models?name=" + name, egg).status(), name);
    }
    assertEquals(
        Set.of(
            "models/egg.stl",
            "models/evil.stl",
            "models/2-evil.stl",
            "models/3-evil.stl",
            "models/a-b.stl"),
        inFolder());
    assertFalse(Files.exists(temp.resolve("evil.stl")));
    assertEquals(404, http.call("GET", "/api/models/..%2Fegg.stl/view").status());
  }

  @Test
  void tooMuchIsRefusedAndNotKept() throws IOException {
    List<String> ours = List.of("Host: " + http.host(), "Authorization: Bearer " + token());
    List<String> announced = new ArrayList<>(ours);
    announced.add("Content-Length: " + (Desk.SMALL.modelBytes() + 1));
    // the server says so before it has read much, and reads no more
    Http.Answer a = http.raw("POST", "/api/models?name=big.stl", announced, new byte[0]);
    assertEquals(413, a.status(), a.text());
    List<String> chunked = new ArrayList<>(ours);
    chunked.add("Transfer-Encoding: chunked");
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    byte[] chunk = new byte[1 << 18];
    for (int i = 0; i < 5; i++) {
      body.writeBytes(
          (Integer.toHexString(chunk.length) + "\r\n").getBytes(StandardCharsets.UTF_8));
      body.writeBytes(chunk);
      body.writeBytes("\r\n".getBytes(StandardCharsets.UTF_8));
    }
    body.writeBytes("0\r\n\r\n".getBytes(StandardCharsets.UTF_8));
    try {
      a = http.raw("POST", "/api/models?name=big.stl", chunked, body.toByteArray());
      assertEquals(413, a.status(), a.text());
    } catch (IOException closedWhileSending) {
      // as good: the server stopped to read
      assertTrue(closedWhileSending.getMessage() != null);
    }
    assertEquals(413, http.post("/api/jobs", " ".repeat(5000)).status());
    assertEquals(Set.of(), inFolder());
  }

  @Test
  void bombsAreRefusedAndNotKept() throws IOException {
    String bomb =
        "<?xml version=\"1.0\"?><!DOCTYPE m [<!ENTITY a \"aaaaaaaaaa\">"
            + "<!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\">"
            + "<!ENTITY c \"&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;\">]><model>&c;</model>";
    String outside =
        "<?xml version=\"1.0\"?><!DOCTYPE m [<!ENTITY x SYSTEM \"file:///etc/passwd\">]>"
            + "<model>&x;</model>";
    for (String xml : List.of(bomb, outside)) {
      Http.Answer a =
          http.call(
              "POST",
              "/api/models?name=b.3mf",
              zipped("3D/3dmodel.model", xml.getBytes(StandardCharsets.UTF_8)));
      assertEquals(422, a.status(), a.text());
      assertFalse(a.text().contains("root:"), a.text());
    }
    byte[] zeros = new byte[400 << 20];
    Http.Answer zip =
        http.call("POST", "/api/models?name=z.3mf", zipped("3D/3dmodel.model", zeros));
    assertEquals(422, zip.status(), zip.text());
    ByteArrayOutputStream gz = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(gz)) {
      out.write(zeros);
    }
    Http.Answer gzip = http.call("POST", "/api/models?name=g.obj.gz", gz.toByteArray());
    assertEquals(422, gzip.status(), gzip.text());
    assertEquals(Set.of(), inFolder());
  }

  private static byte[] zipped(String name, byte[] content) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      zip.putNextEntry(new ZipEntry(name));
      zip.write(content);
    }
    return out.toByteArray();
  }

  @Test
  void whatIsNoModelIsSaidSoInASentence() throws IOException {
    Http.Answer page = http.post("/api/models?name=page.html", "<html>");
    assertEquals(415, page.status());
    Http.Answer junk = http.post("/api/models?name=junk.stl", "this is no model at all");
    assertEquals(422, junk.status(), junk.text());
    assertTrue(junk.text().contains("junk.stl") && !junk.text().contains(".bring-"), junk.text());
    assertEquals(Set.of(), inFolder());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "[]",
        "no json",
        "{}",
        "{\"model\":\"egg.stl\",\"output\":\"/etc\"}",
        "{\"model\":\"egg.stl\",\"material\":\"gold\"}",
        "{\"model\":\"egg.stl\",\"pieces\":99}",
        "{\"model\":\"egg.stl\",\"size_mm\":\"large\"}",
        "{\"model\":\"egg.stl\",\"pull\":[1,2]}",
        "{\"model\":\"egg.stl\",\"block\":\"../box\"}"
      })
  void damagedOrdersAreRefused(String order) throws IOException {
    desk.egg();
    Http.Answer a = http.post("/api/jobs", order);
    assertEquals(400, a.status(), a.text());
    assertTrue(a.text().startsWith("{\"error\":\""), a.text());
  }

  @Test
  void ordersForForeignFilesAreRefused() throws IOException {
    for (String model : List.of("../../etc/passwd", "/etc/passwd", "none.stl", "..")) {
      Http.Answer a = http.post("/api/jobs", "{\"model\":\"" + model + "\"}");
      assertEquals(404, a.status(), model);
    }
    String deep = "[".repeat(2000) + "]".repeat(2000);
    assertEquals(400, http.post("/api/jobs", "{\"model\":" + deep + "}").status());
  }

  @Test
  void aJobThatEatsTheMemoryFailsAloneAndSaysWhatHelps() throws IOException {
    desk.runOutOfMemory();
    http.post("/api/jobs", "{\"model\":\"" + desk.egg() + "\"}");
    String status = desk.until("egg", "failed");
    assertTrue(status.contains("memory") && status.contains("-Xmx"), status);
    assertEquals(200, http.call("GET", "/api/version").status());
    assertEquals("{\"name\":\"\"}", http.call("DELETE", "/api/jobs/egg").text());
  }
}
