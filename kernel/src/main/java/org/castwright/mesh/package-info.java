/**
 * Triangle meshes over primitive arrays and what can be measured on them. A {@link
 * org.castwright.mesh.TriMesh} makes no promise about being closed; whoever needs that asks for a
 * check or takes a solid. Knows nothing of files, molds or booleans.
 */
package org.castwright.mesh;
