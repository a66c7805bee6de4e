package chainwright.notation.syntax;

/** What a token or a node of the tree is. */
public enum SyntaxKind {
  /** A word: a stage, a setting, a name, or the mark {@code to} of a range. */
  WORD,
  /** A number, with its sign: {@code -2.5}. */
  NUMBER,
  /** A number with colons: {@code 3:1} or {@code 0:31.2}. */
  COLON_NUMBER,
  /** A fraction: {@code 1/6}. */
  FRACTION,
  /** The unit of the number before it: {@code kHz}. */
  UNIT,
  /** A text in double quotes. */
  STRING,
  /** The sign {@code =}. */
  EQUALS,
  /** The sign <code>{</code>. */
  LEFT_BRACE,
  /** The sign <code>}</code>. */
  RIGHT_BRACE,
  /** The mark {@code ...} at the start of a line. */
  CONTINUATION,
  /** A line of prose, from its {@code >} to its end. */
  PROSE,
  /** A comment, from its {@code #} to the line's end. */
  COMMENT,
  /** Blanks inside a line. */
  WHITESPACE,
  /** The end of a line. */
  NEWLINE,
  /** Characters that mean nothing here. */
  UNKNOWN,

  /** Node: a whole section. */
  SECTION,
  /** Node: a word with what follows it, and its block. */
  STATEMENT,
  /** Node: a number with its unit. */
  QUANTITY,
  /** Node: two quantities joined by {@code to}. */
  RANGE,
  /** Node: a pair of braces with the statements between them. */
  BLOCK,
  /** Node: consecutive lines of prose. */
  NOTE;

  /**
   * Asks whether a token of this kind carries no meaning for the chain.
   *
   * @return whether it is blank, a line's end, a comment or a continuation mark
   */
  public boolean isTrivia() {
    return switch (this) {
      case WHITESPACE, NEWLINE, COMMENT, CONTINUATION -> true;
      case WORD,
          NUMBER,
          COLON_NUMBER,
          FRACTION,
          UNIT,
          STRING,
          EQUALS,
          LEFT_BRACE,
          RIGHT_BRACE,
          PROSE,
          UNKNOWN,
          SECTION,
          STATEMENT,
          QUANTITY,
          RANGE,
          BLOCK,
          NOTE ->
          false;
    };
  }
}
