package chainwright.notation.lowering;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Words that people say, in any case, and what the notation has for each. */
final class SaidFor {

  private final Map<String, List<String>> written = new TreeMap<>();

  /** Adds the words that are said for one of the notation, which goes behind those it has. */
  void say(String written, String... words) {
    for (String word : words) {
      this.written.computeIfAbsent(word, key -> new ArrayList<>()).add(written);
    }
  }

  /** Returns the words of the notation, likeliest first; empty if the word is none that is said. */
  List<String> of(String word) {
    return List.copyOf(written.getOrDefault(word.toLowerCase(Locale.ROOT), List.of()));
  }

  /** Returns the words that are said, in alphabetical order. */
  Set<String> all() {
    return new LinkedHashSet<>(written.keySet());
  }
}
