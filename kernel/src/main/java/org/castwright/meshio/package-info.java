/**
 * Model files in and out. {@link org.castwright.meshio.MeshReader} accepts STL, OBJ, PLY, OFF and
 * 3MF, plain or gzipped, told apart by what is in the file, and promises the triangles as the file
 * states them, in the file's own unit, or one {@link org.castwright.mesh.MeshException} sentence
 * naming the file, the place, the fault and the remedy. A header is believed only as far as the
 * bytes behind it go. {@link org.castwright.meshio.StlWriter} and {@link
 * org.castwright.meshio.ThreeMfWriter} write the same bytes for the same input. Nothing here
 * repairs, scales or judges a model, and colors and materials are not read.
 */
package org.castwright.meshio;
