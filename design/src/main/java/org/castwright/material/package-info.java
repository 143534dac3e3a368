/**
 * What is poured: generic classes of casting material with shrink, density, channel sizes, flow,
 * heat, mixing and cautions, read from {@code materials.json} beside this package, and from files
 * of the user's own laid over it. Every figure there carries its source or the words "common
 * practice, no source"; what is not known is missing, never guessed. No brands. A leaf: knows
 * nothing of molds.
 */
package org.castwright.material;
