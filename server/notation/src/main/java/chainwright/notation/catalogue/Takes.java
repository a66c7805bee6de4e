package chainwright.notation.catalogue;

import chainwright.quantity.Unit;
import java.util.List;

/** What kind of value a setting takes. */
public sealed interface Takes {

  /**
   * A quantity.
   *
   * @param unit the unit that its limits and ranges are given in, and that it is written in where
   *     no better fits; any unit of the same dimension is accepted
   * @param isSpan whether it takes two values, "5.5 to 9 kHz"
   */
  record InUnit(Unit unit, boolean isSpan) implements Takes {}

  /** A quality factor: a bare number after {@code Q}. */
  record Quality() implements Takes {}

  /** A plain number, such as the 4 of {@code sections 4}. */
  record PlainNumber() implements Takes {}

  /**
   * One word of a closed list.
   *
   * @param words the words, the usual one first; not empty
   */
  record OneOf(List<String> words) implements Takes {

    /**
     * Copies the words.
     *
     * @param words the words
     */
    public OneOf {
      words = List.copyOf(words);
    }
  }

  /** The name of a chain, a bus or a label. */
  record Name() implements Takes {}

  /** Nothing: the word alone says it. */
  record Flag() implements Takes {}
}
