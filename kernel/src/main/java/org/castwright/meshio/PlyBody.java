package org.castwright.meshio;

import org.castwright.meshio.PlyHeader.NumberType;

/** The data of a PLY file as a row of numbers, whatever way they are stored. */
interface PlyBody {

  /** Goes to the row with that index of the element named. */
  void beginRow(String element, int row);

  /** The next number of the row; not a number only if {@code finite} is not asked. */
  double number(NumberType type, boolean finite);

  /** The next number of the row, a whole one. */
  long integer(NumberType type);

  void endRow();

  /** Checks that nothing is left after the last row. */
  void end();

  /** The place of the row at hand, for messages. */
  String where();
}
