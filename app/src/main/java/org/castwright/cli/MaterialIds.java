package org.castwright.cli;

import java.util.Iterator;
import org.castwright.material.Material;
import org.castwright.material.Materials;

/** What may follow {@code --material}, for completion. */
final class MaterialIds implements Iterable<String> {

  @Override
  public Iterator<String> iterator() {
    return Materials.all().stream().map(Material::id).iterator();
  }
}
