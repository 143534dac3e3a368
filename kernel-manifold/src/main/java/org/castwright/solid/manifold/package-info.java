/**
 * The solid kernel over Manifold, a C++ library of mesh booleans, compiled to WebAssembly by its
 * authors and from there to JVM bytecode by our build. {@link
 * org.castwright.solid.manifold.ManifoldKernel} is the one door. It takes closed, oriented,
 * manifold meshes in double precision, gives back such meshes only (each is checked), and gives the
 * same bytes for the same input whatever was computed before and on however many threads. It does
 * not repair, and it cannot be interrupted inside one operation.
 */
package org.castwright.solid.manifold;
