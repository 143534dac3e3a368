/**
 * A build step, not part of the jar: rewrites the classes that Chicory compiles from the module so
 * that HotSpot can run them well. {@link org.castwright.solid.manifold.tuner.Tuner} takes the
 * folder with the original classes and writes changed ones, with the same names and the same
 * results, beside the classes of the kernel. It knows the shapes of the code Chicory 1.7.5 writes
 * and stops the build when it meets others.
 */
package org.castwright.solid.manifold.tuner;
