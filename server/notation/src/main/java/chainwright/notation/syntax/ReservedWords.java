package chainwright.notation.syntax;

import java.util.Set;

/** The words of the notation itself, as far as they say what the next word is. */
public final class ReservedWords {

  /** The first words of statements whose second word is a name. */
  static final Set<String> NAMING_STATEMENTS =
      Set.of("preset", "chain", "bus", "apply", "to", "send", "group", "spill", "source");

  /** The words inside a statement that a name follows. */
  static final Set<String> NAMING_MARKS = Set.of("as", "key", "deliberate");

  private static final Set<String> TAIL_MARKS = Set.of("as", "bypassed", "deliberate");

  private ReservedWords() {}

  /**
   * Asks whether the word after a statement's first word is a name.
   *
   * @param head the first word
   * @return whether a name follows, as after "chain"
   */
  public static boolean isNamingStatement(String head) {
    return NAMING_STATEMENTS.contains(head);
  }

  /**
   * Asks whether a name follows a word inside a statement.
   *
   * @param word the word
   * @return whether a name follows, as after "as"
   */
  public static boolean isNamingMark(String word) {
    return NAMING_MARKS.contains(word);
  }

  /**
   * Asks whether a word stands behind the settings of its stage.
   *
   * @param word the word
   * @return whether it ends the settings, as "bypassed" does
   */
  public static boolean isTailMark(String word) {
    return TAIL_MARKS.contains(word);
  }
}
