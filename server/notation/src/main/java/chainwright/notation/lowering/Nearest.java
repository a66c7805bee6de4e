package chainwright.notation.lowering;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Finds words that a misspelt word may have meant. */
public final class Nearest {

  private static final int MOST = 3;

  /** A shorter word is misspelt in too many ways to be found as a part of another. */
  private static final int SHORTEST_PART = 4;

  /** A shorter word begins too many others. */
  private static final int SHORTEST_START = 3;

  /** A part that is left over weighs more than all letters of the others. */
  private static final int PART = 100;

  private Nearest() {}

  /**
   * Returns the words that are near to a misspelt one, nearest first, at most three.
   *
   * <p>The distance counts insertions, removals, replacements and swaps of neighbours; a word is
   * near when at most a third of the letters differ, and at least one may, but not all. Source: the
   * restricted Damerau-Levenshtein distance (Damerau, "A technique for computer detection and
   * correction of spelling errors", CACM 7(3), 1964; from memory). Where no word is near as a
   * whole, those are that share most parts with it: {@code vocal} with {@code lead-vocal}, {@code
   * bass-gitar} with {@code bass}. The beginning of a part is as good as the part: {@code thresh}
   * for {@code threshold}.
   *
   * @param word the misspelt word
   * @param known the words that exist
   * @return those near to it; empty if none is
   */
  public static List<String> to(String word, Collection<String> known) {
    String lower = word.toLowerCase(Locale.ROOT);
    int allowed = Math.min(Math.max(1, lower.length() / 3), lower.length() - 1);
    List<String> near = nearest(lower, known, allowed);
    return near.isEmpty() ? byParts(lower, known) : near;
  }

  /** Those of which least is left over when their parts are paired with the word's. */
  private static List<String> byParts(String word, Collection<String> known) {
    String[] parts = word.split("-", -1);
    List<String> best = new ArrayList<>();
    int least = Integer.MAX_VALUE;
    for (String candidate : known) {
      int cost = costOfParts(parts, candidate.split("-", -1));
      if (cost < least) {
        best.clear();
      }
      if (cost <= least && cost < Integer.MAX_VALUE) {
        least = cost;
        best.add(candidate);
      }
    }
    return best.stream().limit(MOST).toList();
  }

  /** Counts the parts of a candidate that no part of the word is near to, then the letters. */
  private static int costOfParts(String[] parts, String[] candidate) {
    int letters = 0;
    int left = 0;
    for (String one : candidate) {
      int nearest = Integer.MAX_VALUE;
      for (String part : parts) {
        nearest = Math.min(nearest, distanceOfParts(part, one, parts.length > 1));
      }
      left += nearest == Integer.MAX_VALUE ? 1 : 0;
      letters += nearest == Integer.MAX_VALUE ? 0 : nearest;
    }
    return left == candidate.length ? Integer.MAX_VALUE : left * PART + letters;
  }

  /**
   * The letters that differ between two parts. A part among others says little by itself, so that
   * one letter of it may differ at most.
   */
  private static int distanceOfParts(String part, String other, boolean isOneOfSeveral) {
    if (part.length() < SHORTEST_START) {
      return Integer.MAX_VALUE;
    }
    if (other.toLowerCase(Locale.ROOT).startsWith(part)) {
      return 0;
    }
    int allowed = isOneOfSeveral ? 1 : part.length() < SHORTEST_PART ? 0 : part.length() / 3;
    int distance = distance(part, other, allowed);
    return distance <= allowed ? distance : Integer.MAX_VALUE;
  }

  /** Of two that are as near, people rather get the first letter right. */
  private static List<String> nearest(String word, Collection<String> known, int allowed) {
    return known.stream()
        .map(candidate -> new Scored(candidate, distance(word, candidate, allowed)))
        .filter(scored -> scored.distance <= allowed)
        .sorted(
            Comparator.comparingInt(Scored::distance)
                .thenComparing(one -> !one.word.regionMatches(true, 0, word, 0, 1)))
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
