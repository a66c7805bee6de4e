package chainwright.app.plot;

/** Estimates how wide words stand in a sans-serif face, and makes any text safe for XML. */
final class Lettering {

  private static final String NARROW = "iIl.,:;'|!()[]fjrt ";
  private static final String WIDE = "mwMW%@→";

  private Lettering() {}

  /** Returns a width on the generous side [px]: faces differ, and too wide only costs room. */
  static double width(String text, double sizePx) {
    double ems = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (NARROW.indexOf(c) >= 0) {
        ems += 0.34;
      } else if (WIDE.indexOf(c) >= 0) {
        ems += 0.9;
      } else if (c >= '\u2e80') {
        ems += Character.isLowSurrogate(c) ? 0 : 1.05;
      } else {
        ems += Character.isUpperCase(c) ? 0.68 : 0.59;
      }
    }
    return ems * sizePx;
  }

  /** Returns the text cut to a width, with an ellipsis if it was longer. */
  static String fitted(String text, double sizePx, double widthPx) {
    if (width(text, sizePx) <= widthPx) {
      return text;
    }
    int end = text.length();
    while (end > 0 && width(text.substring(0, end), sizePx) + sizePx > widthPx) {
      end--;
    }
    if (end > 0 && Character.isHighSurrogate(text.charAt(end - 1))) {
      end--;
    }
    return text.substring(0, end).stripTrailing() + "…";
  }

  /**
   * Returns one line without control characters, lone surrogates and marks that turn the writing
   * direction: none of them may stand in XML or move the words after it.
   */
  static String oneLine(String text) {
    StringBuilder out = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean pair =
          Character.isHighSurrogate(c)
              && i + 1 < text.length()
              && Character.isLowSurrogate(text.charAt(i + 1));
      if (pair) {
        out.append(c).append(text.charAt(++i));
      } else if (Character.isSurrogate(c) || c >= '\ufffe') {
        out.append('\ufffd');
      } else if (Character.isISOControl(c) || c == '\u2028' || c == '\u2029') {
        out.append(' ');
      } else if (!turnsDirection(c)) {
        out.append(c);
      }
    }
    return out.toString().strip();
  }

  /** Appends text with the characters XML reserves written as entities. */
  static void appendEscaped(StringBuilder out, String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '&' -> out.append("&amp;");
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '"' -> out.append("&quot;");
        default -> out.append(c);
      }
    }
  }

  private static boolean turnsDirection(char c) {
    return (c >= '\u202a' && c <= '\u202e') || (c >= '\u2066' && c <= '\u2069');
  }
}
