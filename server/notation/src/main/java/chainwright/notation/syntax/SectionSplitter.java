package chainwright.notation.syntax;

import java.util.Arrays;
import java.util.Set;

/** Finds where the sections of a text begin: at each line whose first word is a top-level word. */
final class SectionSplitter {

  /** The words that can only stand at the top of a file. */
  static final Set<String> TOP_LEVEL_WORDS = Set.of("import", "session", "preset", "chain", "bus");

  /** Those of them that have a block. */
  static final Set<String> WORDS_WITH_BLOCK = Set.of("session", "preset", "chain", "bus");

  private static final int LONGEST_WORD = 7;

  private SectionSplitter() {}

  /** Returns the start of each section, ascending, the first always 0, then the text's length. */
  static int[] boundaries(String text) {
    int[] found = new int[16];
    int count = 1;
    int lineStart = 0;
    int length = text.length();
    while (lineStart < length) {
      if (lineStart > 0 && beginsSection(text, lineStart)) {
        if (count + 2 > found.length) {
          found = Arrays.copyOf(found, found.length * 2);
        }
        found[count++] = lineStart;
      }
      lineStart = nextLine(text, lineStart);
    }
    found = Arrays.copyOf(found, count + 1);
    found[count] = length;
    return found;
  }

  private static int nextLine(String text, int from) {
    int length = text.length();
    for (int i = from; i < length; i++) {
      char c = text.charAt(i);
      if (c == '\n' || (c == '\r' && !(i + 1 < length && text.charAt(i + 1) == '\n'))) {
        return i + 1;
      }
    }
    return length;
  }

  private static boolean beginsSection(String text, int lineStart) {
    int start = lineStart;
    while (start < text.length() && Lexer.isBlank(text.charAt(start))) {
      start++;
    }
    int end = start;
    int last = Math.min(text.length(), start + LONGEST_WORD + 1);
    while (end < last && isWordPart(text.charAt(end))) {
      end++;
    }
    int size = end - start;
    return size >= 3
        && size <= LONGEST_WORD
        && TOP_LEVEL_WORDS.contains(text.substring(start, end));
  }

  private static boolean isWordPart(char c) {
    return Character.isLetterOrDigit(c) || c == '-' || c == '_' || c == '/';
  }
}
