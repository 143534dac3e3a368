/**
 * Small values at the door: points, boxes, frames and length units. Millimeters inside, everywhere;
 * other units exist only in {@link org.castwright.geom.LengthUnit}. Nothing here knows a triangle.
 */
package org.castwright.geom;
