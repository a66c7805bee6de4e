package chainwright.app.cli;

import com.github.difflib.DiffUtils;
import com.github.difflib.UnifiedDiffUtils;
import java.util.Arrays;
import java.util.List;

/** Two texts as a unified diff, which common tools show in colour and apply. */
final class UnifiedDiff {

  private static final int CONTEXT = 3;

  /** Source: IEEE Std 1003.1-2017, diff, section STDOUT, for a last line that is not ended. */
  private static final String NOT_ENDED = "\n\\ No newline at end of file";

  private UnifiedDiff() {}

  /**
   * Compares two texts.
   *
   * @param name what both are called
   * @param before the text as it is
   * @param after the text as it would be
   * @return the diff, each line ended by LF; empty if the texts are equal
   */
  static String of(String name, String before, String after) {
    List<String> old = lines(before);
    List<String> diff =
        UnifiedDiffUtils.generateUnifiedDiff(
            name, name, old, DiffUtils.diff(old, lines(after)), CONTEXT);
    return diff.isEmpty() ? "" : String.join("\n", diff) + "\n";
  }

  /** A line keeps its CR, and says whether it is ended: both are differences. */
  private static List<String> lines(String text) {
    List<String> lines = Arrays.asList(text.split("\n", -1));
    int last = lines.size() - 1;
    if (lines.get(last).isEmpty()) {
      return lines.subList(0, last);
    }
    lines.set(last, lines.get(last) + NOT_ENDED);
    return lines;
  }
}
