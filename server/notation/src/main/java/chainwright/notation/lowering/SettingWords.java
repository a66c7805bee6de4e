package chainwright.notation.lowering;

import chainwright.notation.catalogue.StageKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Words of the trade for settings that the notation calls otherwise.
 *
 * <p>Source: common practice, no source.
 */
final class SettingWords {

  private static final Map<String, List<String>> NAMES = new TreeMap<>();

  static {
    say("centre", "f", "fc", "freq", "frequency", "center");
    say("cutoff", "f", "fc", "freq", "frequency", "corner");
    say("gain", "g", "level", "amount", "boost", "cut");
    say("Q", "bandwidth", "bw");
    say("slope", "order", "steepness");
    say("make-up", "output", "out-gain", "makeup-gain", "make-up-gain", "output-gain");
    say("blend", "mix", "wet", "dry-wet");
    say("range", "floor", "depth");
    say("max-reduction", "range", "depth");
    say("decay", "length", "time", "rt60");
  }

  private SettingWords() {}

  /** Returns the settings of a kind that the trade calls by a word; empty if there is none. */
  static List<String> of(StageKind kind, String word) {
    List<String> names = NAMES.getOrDefault(word.toLowerCase(Locale.ROOT), List.of());
    return names.stream().filter(name -> kind.setting(name).isPresent()).toList();
  }

  private static void say(String name, String... words) {
    for (String word : words) {
      NAMES.computeIfAbsent(word, key -> new ArrayList<>()).add(name);
    }
  }
}
