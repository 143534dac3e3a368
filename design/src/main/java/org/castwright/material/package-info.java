/**
 * What is poured: generic classes of casting material with shrink, density, channel sizes and
 * cautions, read from {@code materials.json} beside this package. Every figure there carries its
 * source or the words "common practice, no source". No brands. A leaf: knows nothing of molds.
 */
package org.castwright.material;
