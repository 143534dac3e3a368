package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Bad input and bad usage: code 2, a sentence, nothing written. */
class BadInputTest {

  @TempDir private Path dir;

  private Path out() {
    return dir.resolve("mold");
  }

  private Cli mold(Path model, String... more) {
    String[] args = {"mold", model.toString(), "-o", out().toString()};
    return Cli.run(Stream.of(args, more).flatMap(Arrays::stream).toArray(String[]::new));
  }

  // ---- files ----

  @Test
  void aFileThatIsNotThere() throws IOException {
    assertTrue(mold(dir.resolve("gone.stl")).refused().contains("no such file"));
    assertEquals(Set.of(), Cli.namesIn(dir));
  }

  @Test
  void aFolderInsteadOfAFile() throws IOException {
    mold(Files.createDirectory(dir.resolve("folder"))).refused();
    assertEquals(Set.of("folder"), Cli.namesIn(dir));
  }

  @Test
  void textThatPretendsToBeStl() throws IOException {
    String letter = "Dear all,\nplease find no model in this file.\n".repeat(20);
    refuses("letter.stl", letter.getBytes(java.nio.charset.StandardCharsets.US_ASCII));
  }

  @Test
  void anEmptyFile() throws IOException {
    refuses("empty.stl", new byte[0]);
  }

  @Test
  void aModelWithoutTriangles() throws IOException {
    refuses("none.stl", new byte[84]);
  }

  @Test
  void aTruncatedFile() throws IOException {
    byte[] whole = Files.readAllBytes(Cli.egg(dir));
    refuses("cut.stl", Arrays.copyOf(whole, whole.length / 2));
  }

  @Test
  void aCoordinateThatIsNoNumber() throws IOException {
    byte[] bytes = Files.readAllBytes(Cli.egg(dir));
    // the first corner's x follows the header (84 bytes) and the normal (12)
    ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putFloat(96, Float.NaN);
    refuses("nan.stl", bytes);
  }

  private void refuses(String name, byte[] bytes) throws IOException {
    Path file = Files.write(dir.resolve(name), bytes);
    Set<String> before = Cli.namesIn(dir);
    String words = mold(file).refused();
    assertTrue(words.contains(name), "which file? " + words);
    assertEquals(before, Cli.namesIn(dir), "something was written");
    Cli.run("look", file.toString()).refused();
  }

  // ---- folders ----

  @Test
  void aFolderOfSomebodyElse() throws IOException {
    Path model = Cli.egg(dir);
    Files.createDirectory(out());
    Files.writeString(out().resolve("diary.txt"), "Tuesday");
    assertTrue(mold(model).refused().contains("holds other files"));
    assertEquals(Set.of("diary.txt"), Cli.namesIn(out()));
  }

  @Test
  void aFileWhereTheFolderShouldStand() throws IOException {
    Path model = Cli.egg(dir);
    Files.writeString(out(), "a file");
    mold(model).refused();
    Cli.run("mold", model.toString(), "-o", out().resolve("below").toString()).refused();
    assertEquals("a file", Files.readString(out()));
  }

  @Test
  void provingAFolderThatIsNoMold() throws IOException {
    assertTrue(Cli.run("prove", dir.toString()).refused().contains("report.json"));
    Cli.run("prove", dir.resolve("gone").toString()).refused();
    Files.writeString(dir.resolve("report.json"), "{\"castwright\": \"0.1.0\"}");
    assertTrue(Cli.run("prove", dir.toString()).refused().contains("damaged"));
  }

  @Test
  void pouringAFolderThatIsNoMold() throws IOException {
    assertTrue(Cli.run("pour", dir.toString()).refused().contains("report.json"));
    Files.writeString(dir.resolve("report.json"), "{\"castwright\": \"0.1.0\"}");
    assertTrue(Cli.run("pour", dir.toString()).refused().contains("damaged"));
  }

  @Test
  void aJobThatIsNone() throws IOException {
    Path job = Files.writeString(dir.resolve("job.json"), "{}");
    Cli.run("mold", "--job", job.toString(), "-o", out().toString()).refused();
    Cli.run("mold", "--job", dir.resolve("gone").toString(), "-o", out().toString()).refused();
    assertFalse(Files.exists(out()));
  }

  @Test
  void aModelAndAJobAtOnceOrNeither() throws IOException {
    Path model = Cli.egg(dir);
    mold(model, "--job", model.toString()).refused();
    Cli.run("mold", "-o", out().toString()).refused();
  }

  // ---- options ----

  static Stream<String> badOptions() {
    return Stream.of(
        "--material unobtainium",
        "--shrink much",
        "--shrink 50",
        "--pull 0,0,0",
        "--wall 0.1",
        "--key-count 2",
        "--clearance 5",
        "--release 0",
        "--release NaN",
        "--threads -3",
        "--threads 1000",
        "--size -4",
        "--scale 0",
        "--size 40 --scale 2",
        "--up sideways",
        "--bed 0x220x220",
        "--remesh-cell -1");
  }

  @ParameterizedTest
  @MethodSource("badOptions")
  void anOptionThatDoesNotHold(String option) throws IOException {
    Path model = Cli.egg(dir);
    mold(model, option.split(" ", -1)).refused();
    assertEquals(Set.of("egg.stl"), Cli.namesIn(dir));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "frobnicate",
        "mold",
        "mold egg.stl",
        "mold egg.stl -o x --block pyramid",
        "mold egg.stl -o x --pull 1,2",
        "mold egg.stl -o x --pull up",
        "mold egg.stl -o x --closing glue",
        "mold egg.stl -o x --keys",
        "mold egg.stl -o x --units furlong",
        "mold egg.stl -o x --block-out nothing",
        "mold egg.stl -o x --block-out -3",
        "mold egg.stl -o x --no-such-option",
        "look",
        "look --release wide egg.stl",
        "prove",
        "demo teapot -o x"
      })
  void usageErrors(String args) {
    Cli r = Cli.run(args.split(" ", -1));
    assertEquals(2, r.code(), r.toString());
    assertEquals("", r.out());
    assertFalse(r.err().isBlank());
    assertFalse(r.err().contains("Exception") || r.err().contains("\tat "), r.err());
  }
}
