package org.castwright.solid.manifold;

import java.lang.ref.ReferenceQueue;
import java.lang.ref.WeakReference;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.castwright.mesh.TriMesh;

/**
 * The bodies one instance has imported, each kept while its mesh (by identity) is still in use by
 * the program, so that a body is imported once however often it is cut. Bodies not used for long go
 * when there is too much.
 */
final class ImportCache {

  /**
   * Triangles kept beyond those of the current operation. A triangle takes about 300 bytes of
   * linear memory, so this is about 300 MB of the 2 GB an instance may have.
   */
  private static final long MOST_TRIANGLES = 1_000_000;

  private final Function<TriMesh, NativeObject> importer;

  /** Other threads look what is there. */
  private final Map<Key, Entry> entries = new ConcurrentHashMap<>();

  private final ReferenceQueue<TriMesh> gone = new ReferenceQueue<>();
  private long triangles;
  private long clock;

  ImportCache(Function<TriMesh, NativeObject> importer) {
    this.importer = importer;
  }

  int size() {
    return entries.size();
  }

  long known(List<TriMesh> meshes) {
    long sum = 0;
    for (TriMesh mesh : meshes) {
      sum += entries.containsKey(new Key(mesh, null)) ? mesh.triangleCount() : 0;
    }
    return sum;
  }

  /** Makes all of {@code meshes} available and frees what nobody needs any more. */
  void prepare(List<TriMesh> meshes) {
    for (Object key = gone.poll(); key != null; key = gone.poll()) {
      drop((Key) key);
    }
    clock++;
    long needed = 0;
    for (TriMesh mesh : meshes) {
      Entry entry = entries.get(new Key(mesh, null));
      if (entry != null) {
        entry.lastUse = clock;
      }
      needed += mesh.triangleCount();
    }
    evict(needed);
    for (TriMesh mesh : meshes) {
      if (!entries.containsKey(new Key(mesh, null))) {
        NativeObject body = importer.apply(mesh);
        triangles += mesh.triangleCount();
        entries.put(new Key(mesh, gone), new Entry(body, mesh.triangleCount(), clock));
      }
    }
  }

  /** A mesh that has been prepared. */
  NativeObject get(TriMesh mesh) {
    return entries.get(new Key(mesh, null)).body;
  }

  /** Drops the bodies not used for longest until the current ones fit. */
  private void evict(long needed) {
    if (triangles + needed <= MOST_TRIANGLES) {
      return;
    }
    List<Map.Entry<Key, Entry>> old = new ArrayList<>(entries.entrySet());
    old.removeIf(e -> e.getValue().lastUse == clock);
    old.sort((a, b) -> Long.compare(a.getValue().lastUse, b.getValue().lastUse));
    for (Map.Entry<Key, Entry> e : old) {
      if (triangles + needed <= MOST_TRIANGLES) {
        return;
      }
      drop(e.getKey());
    }
  }

  private void drop(Key key) {
    Entry entry = entries.remove(key);
    if (entry != null) {
      triangles -= entry.triangles;
      entry.body.close();
    }
  }

  /** A mesh by identity; equal to itself even after the mesh is gone. */
  private static final class Key extends WeakReference<TriMesh> {
    private final int hash;

    Key(TriMesh mesh, ReferenceQueue<TriMesh> queue) {
      super(mesh, queue);
      hash = System.identityHashCode(mesh);
    }

    @Override
    public int hashCode() {
      return hash;
    }

    @Override
    public boolean equals(Object other) {
      if (this == other) {
        return true;
      }
      TriMesh mesh = get();
      return mesh != null && other instanceof Key key && key.get() == mesh;
    }
  }

  private static final class Entry {
    private final NativeObject body;
    private final int triangles;
    private long lastUse;

    Entry(NativeObject body, int triangles, long lastUse) {
      this.body = body;
      this.triangles = triangles;
      this.lastUse = lastUse;
    }
  }
}
