/**
 * The size a casting ends with: shrinks of print, mold and casting in a chain, each with its band
 * and along each axis, the factor to scale the model by, and tables of tolerance classes from
 * casting and molding standards to compare with. Pure numbers, mm and percent; knows no meshes,
 * plans or files. The tables were made for metals and for plastics parts from tools: anything else
 * is by analogy only, and whoever shows them says so.
 */
package org.castwright.size;
