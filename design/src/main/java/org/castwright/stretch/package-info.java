/**
 * What a flexible casting or mold forgives: it takes a closed casting (mm), unit pulls, and the
 * strain that the flexible part takes, and promises every place from which no pull leads out
 * straight, with the strain that leaving takes there, measured on cross-sections of that place, and
 * whether that is allowed. It does not choose pulls, order pieces or simulate: strains are those of
 * widths and girths that have to pass each other.
 */
package org.castwright.stretch;
