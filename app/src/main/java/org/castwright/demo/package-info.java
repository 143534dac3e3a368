/**
 * Models to try the program with, made in code: closed, outward-oriented meshes in millimeters that
 * open in two rigid pieces along their {@code z} axis with no trapped space, because each is the
 * room between two heights over one outline. The same vertices on every machine. No reader or
 * writer here, and no mold.
 */
package org.castwright.demo;
