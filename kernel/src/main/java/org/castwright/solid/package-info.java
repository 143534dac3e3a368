/**
 * Closed bodies and the one small interface that combines them. {@link
 * org.castwright.solid.SolidKernel} accepts closed, oriented, manifold meshes and promises that
 * every body it gives back is closed, oriented and manifold too; when it cannot keep that promise
 * it throws a {@link org.castwright.solid.SolidException} that names the operands. Double precision
 * in and out. Implementations live in modules of their own; the rest of the program sees only this
 * room.
 */
package org.castwright.solid;
