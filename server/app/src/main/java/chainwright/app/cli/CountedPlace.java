package chainwright.app.cli;

import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.PositionEncoding;
import chainwright.app.workspace.TextPosition;

/**
 * A place as people count.
 *
 * @param line the line, from 1
 * @param column the character in the line, from 1; every code point counts as one
 */
record CountedPlace(int line, int column) {

  static CountedPlace of(DocumentSnapshot document, int offset) {
    TextPosition position = document.positions(PositionEncoding.UTF_32).positionOf(offset);
    return new CountedPlace(position.line() + 1, position.character() + 1);
  }
}
