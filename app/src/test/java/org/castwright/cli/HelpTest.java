package org.castwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.castwright.material.Materials;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** Examples in help texts are true, and shells can complete. */
class HelpTest {

  private static List<String> examples(CommandLine command) {
    return Arrays.stream(command.getCommandSpec().usageMessage().footer())
        .map(String::trim)
        .filter(l -> l.startsWith("castwright "))
        .toList();
  }

  @Test
  void everyCommandHasExamplesThatParse() {
    CommandLine main = Main.commandLine();
    assertTrue(examples(main).size() >= 3);
    main.getSubcommands()
        .forEach(
            (name, command) -> {
              if (name.equals("help") || name.equals("completion")) {
                return;
              }
              List<String> examples = examples(command);
              assertTrue(!examples.isEmpty(), name + " has no example");
              for (String example : examples) {
                assertTrue(example.startsWith("castwright " + name), example);
                String[] args = example.substring("castwright ".length()).split(" ");
                // throws if an option is not known or a value does not fit
                assertTrue(Main.commandLine().parseArgs(args).hasSubcommand(), example);
              }
            });
  }

  @Test
  void theCompletionScriptCompletes(@TempDir Path dir) throws Exception {
    Cli r = Cli.run("completion");
    assertEquals(0, r.code(), r.err());
    Path script = Files.writeString(dir.resolve("completion"), r.out());
    Assumptions.assumeTrue(Files.isExecutable(Path.of("/bin/bash")));
    assertEquals(List.of("mold"), completed(script, "mo"));
    assertTrue(completed(script, "mold", "--pa").contains("--paper"));
    List<String> materials = completed(script, "mold", "--material", "");
    assertEquals(Materials.all().size(), materials.size(), materials.toString());
  }

  private static List<String> completed(Path script, String... words)
      throws IOException, InterruptedException {
    String line =
        "source '"
            + script
            + "'; COMP_WORDS=(castwright "
            + String.join(" ", Arrays.stream(words).map(w -> "'" + w + "'").toList())
            + "); COMP_CWORD="
            + words.length
            + "; _complete_castwright; printf '%s\\n' \"${COMPREPLY[@]}\"";
    Process p = new ProcessBuilder("/bin/bash", "-c", line).start();
    String said = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, p.waitFor(), said);
    return said.lines().map(String::trim).filter(l -> !l.isEmpty()).toList();
  }
}
