package chainwright.notation.lowering;

import chainwright.notation.catalogue.StageKind;
import java.util.List;

/**
 * Words of the trade for settings that the notation calls otherwise.
 *
 * <p>Source: common practice, no source.
 */
final class SettingWords {

  private static final SaidFor NAMES = new SaidFor();

  static {
    NAMES.say("centre", "f", "fc", "freq", "frequency", "center");
    NAMES.say("cutoff", "f", "fc", "freq", "frequency", "corner");
    NAMES.say("gain", "g", "level", "amount", "boost", "cut");
    NAMES.say("Q", "bandwidth", "bw");
    NAMES.say("slope", "order", "steepness");
    NAMES.say("make-up", "output", "out-gain", "makeup-gain", "make-up-gain", "output-gain");
    NAMES.say("blend", "mix", "wet", "dry-wet");
    NAMES.say("range", "floor", "depth");
    NAMES.say("max-reduction", "range", "depth");
    NAMES.say("decay", "length", "time", "rt60");
  }

  private SettingWords() {}

  /** Returns the settings of a kind that the trade calls by a word; empty if there is none. */
  static List<String> of(StageKind kind, String word) {
    List<String> names = NAMES.of(word);
    return names.stream().filter(name -> kind.setting(name).isPresent()).toList();
  }
}
