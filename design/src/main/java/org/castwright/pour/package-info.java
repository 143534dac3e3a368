/**
 * The mechanics of a pour: pressure of the liquid on every facet, what opens and lifts the pieces,
 * how a gate fills and a vent breathes, how far a wall bends, what floats. Pure calculations on
 * numbers and meshes, with records for results; each formula names its source. Accepts closed
 * meshes and an up direction; promises no advice: what a number means for a job is said by those
 * who ask. Units in names: mm, N, Pa, Pa·s, kg/m³, s. Knows no plans, files or materials.
 */
package org.castwright.pour;
