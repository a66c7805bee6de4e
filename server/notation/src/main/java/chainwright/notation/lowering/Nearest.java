package chainwright.notation.lowering;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToIntFunction;

/** Finds words that a misspelt word may have meant. */
public final class Nearest {

  private static final int MOST = 3;

  /** A shorter word is a part of too many. */
  private static final int SHORTEST_PART = 4;

  private Nearest() {}

  /**
   * Returns the words that are near to a misspelt one, nearest first, at most three.
   *
   * <p>The distance counts insertions, removals, replacements and swaps of neighbours; a word is
   * near when at most a third of the letters differ, and at least one may. Source: the restricted
   * Damerau-Levenshtein distance (Damerau, "A technique for computer detection and correction of
   * spelling errors", CACM 7(3), 1964; from memory). Where no word is near as a whole, those are
   * that have a part near to it: {@code lead-vocal} to {@code vocal}.
   *
   * @param word the misspelt word
   * @param known the words that exist
   * @return those near to it; empty if none is
   */
  public static List<String> to(String word, Collection<String> known) {
    String lower = word.toLowerCase(Locale.ROOT);
    int allowed = Math.max(1, lower.length() / 3);
    List<String> near = nearest(known, allowed, one -> distance(lower, one, allowed));
    return near.isEmpty() && lower.length() >= SHORTEST_PART
        ? nearest(known, allowed, one -> distanceToPart(lower, one, allowed))
        : near;
  }

  private static int distanceToPart(String from, String candidate, int allowed) {
    int nearest = Integer.MAX_VALUE;
    for (String part : candidate.split("-", -1)) {
      nearest = Math.min(nearest, distance(from, part, allowed));
    }
    return nearest;
  }

  private static List<String> nearest(
      Collection<String> known, int allowed, ToIntFunction<String> distance) {
    return known.stream()
        .map(candidate -> new Scored(candidate, distance.applyAsInt(candidate)))
        .filter(scored -> scored.distance <= allowed)
        .sorted(Comparator.comparingInt(Scored::distance))
        .limit(MOST)
        .map(Scored::word)
        .toList();
  }

  private record Scored(String word, int distance) {}

  private static int distance(String from, String candidate, int allowed) {
    String to = candidate.toLowerCase(Locale.ROOT);
    if (Math.abs(from.length() - to.length()) > allowed) {
      return Integer.MAX_VALUE;
    }
    int[][] cost = new int[from.length() + 1][to.length() + 1];
    for (int i = 0; i <= from.length(); i++) {
      for (int j = 0; j <= to.length(); j++) {
        cost[i][j] = i == 0 ? j : j == 0 ? i : step(from, to, cost, i, j);
      }
    }
    return cost[from.length()][to.length()];
  }

  private static int step(String from, String to, int[][] cost, int i, int j) {
    int replace = from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1;
    int best = Math.min(Math.min(cost[i - 1][j], cost[i][j - 1]) + 1, cost[i - 1][j - 1] + replace);
    boolean isSwap =
        i > 1
            && j > 1
            && from.charAt(i - 1) == to.charAt(j - 2)
            && from.charAt(i - 2) == to.charAt(j - 1);
    return isSwap ? Math.min(best, cost[i - 2][j - 2] + 1) : best;
  }
}
