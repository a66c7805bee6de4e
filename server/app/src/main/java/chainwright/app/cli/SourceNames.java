package chainwright.app.cli;

import chainwright.app.page.SourceName;
import chainwright.app.plot.CellText;
import java.util.Comparator;
import java.util.List;

/** Names sources so briefly that, as a rule, they take one line. */
final class SourceNames {

  private SourceNames() {}

  /**
   * Names the first source, whole, and as many others as fit beside it.
   *
   * @param sources the sources in full
   * @param topic the words by which {@code explain} names all of them
   * @param cells how many cells there are
   * @return such as "B. Owsinski, The Mixing Engineer's Handbook (from memory); 2 more:
   *     `chainwright explain bell gain`"
   */
  static String brief(List<String> sources, String topic, int cells) {
    // What somebody has written comes before what everybody does.
    List<String> ranked =
        sources.stream().sorted(Comparator.comparing(SourceName::isPractice)).toList();
    StringBuilder names = new StringBuilder(SourceName.brief(ranked.get(0)));
    int named = 1;
    for (; named < sources.size(); named++) {
      String next = "; " + SourceName.brief(ranked.get(named));
      int left = sources.size() - named - 1;
      if (CellText.width(names + next + more(left)) > cells) {
        break;
      }
      names.append(next);
    }
    // Where the others are told of goes on to the next line if it must.
    return names
        + more(sources.size() - named)
        + (named < sources.size() ? ": `chainwright explain " + topic + "`" : "");
  }

  private static String more(int count) {
    return count == 0 ? "" : "; " + count + " more";
  }
}
