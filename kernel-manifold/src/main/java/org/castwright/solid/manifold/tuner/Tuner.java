package org.castwright.solid.manifold.tuner;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.commons.ClassRemapper;
import org.objectweb.asm.commons.SimpleRemapper;
import org.objectweb.asm.tree.ClassNode;

/** Entry of the build step. */
public final class Tuner {

  private static final String FOLDER = "org/castwright/solid/manifold";

  /** The classes with compiled code in them; the others only support them. */
  private static final String COMPILED =
      "ManifoldWasmMachine(FuncGroup_\\d+|Dispatch_\\d+|MachineCall)?\\.class";

  private Tuner() {}

  /**
   * Reads the compiled classes below the first folder and writes tuned ones below the second.
   *
   * @throws IllegalStateException if the code is not as expected
   */
  public static void main(String[] folders) throws IOException {
    Path from = Path.of(folders[0], FOLDER);
    Path to = Path.of(folders[1], FOLDER);
    List<Path> files;
    try (Stream<Path> all = Files.list(from)) {
      files = all.filter(p -> p.getFileName().toString().matches(COMPILED)).sorted().toList();
    }
    DirectMemory memory = new DirectMemory();
    int moved = 0;
    for (Path file : files) {
      ClassNode code = read(Files.readAllBytes(file));
      memory.apply(code);
      moved += new LoopOutliner(code).apply();
      Files.write(to.resolve(file.getFileName()), written(code));
    }
    memory.requireChanges();
    if (moved == 0) {
      throw new IllegalStateException("no loop found to move in " + from);
    }
  }

  /** The class with the memory interface replaced by the one class that implements it. */
  private static ClassNode read(byte[] bytes) {
    ClassNode code = new ClassNode();
    SimpleRemapper flat =
        new SimpleRemapper(Opcodes.ASM9, Map.of(DirectMemory.INTERFACE, DirectMemory.FLAT));
    new ClassReader(bytes)
        .accept(new ClassRemapper(code, flat), ClassReader.SKIP_FRAMES | ClassReader.SKIP_DEBUG);
    return code;
  }

  private static byte[] written(ClassNode code) {
    ClassWriter out =
        new ClassWriter(ClassWriter.COMPUTE_FRAMES) {
          @Override
          protected String getCommonSuperClass(String a, String b) {
            return "java/lang/Object";
          }
        };
    code.accept(out);
    return out.toByteArray();
  }
}
