package chainwright.notation.diagnostic;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Sets sentences for people as print does, and leaves what is to be typed as it is typed. */
public final class Prose {

  /** A stretch between backticks, or a hyphen that is the sign of a number. */
  private static final Pattern CODE_OR_SIGN =
      Pattern.compile("`[^`]*`|(?<![\\p{L}\\p{N}.])-(?=\\d)");

  private static final String MINUS = "\u2212";

  private Prose() {}

  /** Sets a sentence, and begins it with a capital letter where it begins with a letter. */
  static String sentence(String sentence) {
    return sentence.isEmpty()
        ? sentence
        : set(Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1));
  }

  /**
   * Writes the minus of numbers as a minus sign, except between backticks.
   *
   * @param sentence such as "at -18 dBFS; write `-18 dBFS`"
   * @return such as "at −18 dBFS; write `-18 dBFS`"
   */
  public static String set(String sentence) {
    if (sentence.indexOf('-') < 0) {
      return sentence;
    }
    return CODE_OR_SIGN
        .matcher(sentence)
        .replaceAll(
            found -> found.group().equals("-") ? MINUS : Matcher.quoteReplacement(found.group()));
  }
}
