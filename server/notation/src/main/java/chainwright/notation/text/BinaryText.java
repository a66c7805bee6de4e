package chainwright.notation.text;

import java.util.Optional;

/** Tells a text from a recording, a picture or another file that is none. */
public final class BinaryText {

  /** How much is looked at [characters]; a file that is no text shows it at its beginning. */
  private static final int LOOKED_AT = 8_000;

  /** A text may have a stray control character or two. */
  private static final int FEW = 4;

  private static final int ONE_IN = 20;

  private BinaryText() {}

  /**
   * Looks for what no text holds: a zero, or control characters and replacement characters (which
   * stand for bytes that are no UTF-8) in more than one of twenty places.
   *
   * @param text the text
   * @return where the first run of them stands, or empty if it is a text
   */
  public static Optional<TextSpan> find(CharSequence text) {
    int length = Math.min(text.length(), LOOKED_AT);
    int first = -1;
    int count = 0;
    boolean isZero = false;
    for (int i = 0; i < length; i++) {
      if (isForeign(text.charAt(i))) {
        first = first < 0 ? i : first;
        count++;
        isZero |= text.charAt(i) == 0;
      }
    }
    boolean isText = !isZero && (count < FEW || count * ONE_IN < length);
    return isText ? Optional.empty() : Optional.of(run(text, first));
  }

  private static TextSpan run(CharSequence text, int first) {
    int end = first;
    while (end < text.length() && isForeign(text.charAt(end))) {
      end++;
    }
    return new TextSpan(first, end);
  }

  /** A form feed parts the pages of some old texts. */
  private static boolean isForeign(char one) {
    boolean isBlank = one == '\t' || one == '\n' || one == '\r' || one == '\f';
    return one == '\ufffd' || (Character.isISOControl(one) && !isBlank);
  }
}
