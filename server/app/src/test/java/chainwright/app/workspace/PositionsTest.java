package chainwright.app.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.text.LineIndex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PositionsTest {

  /** Characters of one, two, three and four bytes, and all three ends of line. */
  private static final String TEXT = "aé\u20ac\ud83c\udf99z\r\nb\rc\n\nend";

  @ParameterizedTest
  @CsvSource({
    // From the Unicode standard's table of UTF-8: é 2 bytes, the euro 3, the microphone 4.
    "UTF_8,  0, 3,  2",
    "UTF_8,  0, 6,  3",
    "UTF_8,  0, 10, 5",
    "UTF_16, 0, 3,  3",
    "UTF_16, 0, 5,  5",
    "UTF_32, 0, 3,  3",
    "UTF_32, 0, 4,  5",
    "UTF_16, 1, 0,  8",
    "UTF_16, 2, 1,  11",
    "UTF_16, 4, 3,  16",
  })
  void conversion_place_isOffsetAndBack(
      PositionEncoding encoding, int line, int character, int offset) {
    TextPosition place = new TextPosition(line, character);
    assertThat(positions(encoding).offsetOf(place)).isEqualTo(offset);
    assertThat(positions(encoding).positionOf(offset)).isEqualTo(place);
  }

  @ParameterizedTest
  @CsvSource({
    "past the line's end,      UTF_16, 0,  99, 6",
    "past the last line,       UTF_16, 9,  0,  16",
    "past the text's end,      UTF_16, 4,  9,  16",
    "before the first line,    UTF_16, -1, 4,  0",
    "before the line's start,  UTF_16, 1,  -4, 8",
    "inside a pair,            UTF_16, 0,  4,  3",
    "inside bytes,             UTF_8,  0,  8,  3",
  })
  void offsetOf_noSuchPlace_isTheNearest(
      String what, PositionEncoding encoding, int line, int character, int offset) {
    assertThat(positions(encoding).offsetOf(new TextPosition(line, character)))
        .as(what)
        .isEqualTo(offset);
  }

  @ParameterizedTest
  @EnumSource(PositionEncoding.class)
  void conversion_everyCharacterStart_isReadBack(PositionEncoding encoding) {
    Positions positions = positions(encoding);
    for (int offset = 0; offset < TEXT.length(); offset++) {
      boolean isStart = !Character.isLowSurrogate(TEXT.charAt(offset));
      boolean isInsideLineEnd = TEXT.charAt(offset) == '\n' && TEXT.startsWith("\r\n", offset - 1);
      if (isStart && !isInsideLineEnd) {
        assertThat(positions.offsetOf(positions.positionOf(offset))).isEqualTo(offset);
      }
    }
  }

  private static Positions positions(PositionEncoding encoding) {
    return new Positions(TEXT, LineIndex.of(TEXT), encoding);
  }
}
