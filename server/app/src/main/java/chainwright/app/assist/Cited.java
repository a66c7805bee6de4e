package chainwright.app.assist;

import chainwright.app.page.SourceName;
import java.util.Comparator;
import java.util.List;

/** Names the sources of a range in the little room of a hover. */
final class Cited {

  private Cited() {}

  /**
   * Names the first source, and says where the others stand.
   *
   * @param sources the sources in full, at least one; what somebody has written comes before what
   *     everybody does
   * @param topic the words that {@code explain} takes, such as "compressor ratio"
   * @return such as "R. Izhaki, Mixing Audio (from memory), and 2 more: `chainwright explain
   *     compressor ratio`"
   */
  static String briefly(List<String> sources, String topic) {
    String first =
        sources.stream()
            .min(Comparator.comparing(SourceName::isPractice))
            .map(SourceName::brief)
            .orElseThrow(() -> new IllegalArgumentException("a range must have a source"));
    int others = sources.size() - 1;
    return others == 0
        ? first
        : first + ", and " + others + " more: `chainwright explain " + topic + "`";
  }
}
