package chainwright.notation.syntax;

import chainwright.notation.text.TextSpan;
import java.util.Optional;

/** What stands after the first word of a statement, read without knowing any vocabulary. */
public sealed interface Item {

  /**
   * Returns where it stands.
   *
   * @return the span, from the section's start
   */
  TextSpan span();

  /**
   * A word.
   *
   * @param text the word
   * @param span where it stands
   */
  record Word(String text, TextSpan span) implements Item {}

  /**
   * A number, perhaps with a unit.
   *
   * @param kind how the number is written: {@link SyntaxKind#NUMBER}, {@link
   *     SyntaxKind#COLON_NUMBER} or {@link SyntaxKind#FRACTION}
   * @param number the number as written
   * @param numberSpan where the number stands
   * @param unit the unit as written
   * @param unitSpan where the unit stands; empty after the number if there is none
   */
  record Amount(
      SyntaxKind kind, String number, TextSpan numberSpan, Optional<String> unit, TextSpan unitSpan)
      implements Item {

    @Override
    public TextSpan span() {
      return numberSpan.union(unitSpan);
    }
  }

  /**
   * Two numbers joined by {@code to}.
   *
   * @param low the first
   * @param high the second
   */
  record Range(Amount low, Amount high) implements Item {

    @Override
    public TextSpan span() {
      return low.span().union(high.span());
    }
  }

  /**
   * A text in quotes.
   *
   * @param text what stands between the quotes, escapes resolved
   * @param span where it stands, with its quotes
   */
  record Text(String text, TextSpan span) implements Item {}

  /**
   * The sign {@code =}, or something the parser has reported already.
   *
   * @param text as written
   * @param span where it stands
   */
  record Mark(String text, TextSpan span) implements Item {}
}
