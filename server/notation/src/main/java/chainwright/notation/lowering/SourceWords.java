package chainwright.notation.lowering;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Words of the trade for what is recorded that are no kinds of source, and the kinds they mean.
 *
 * <p>Source: common practice, no source.
 */
public final class SourceWords {

  private static final Map<String, List<String>> KINDS = new TreeMap<>();

  static {
    say("lead-vocal", "vox", "voice", "singer", "singing");
    say("backing-vocal", "vox", "bv", "bvs", "harmony", "harmonies");
    say("speech", "voice", "narration", "narrator", "dialogue", "dialog", "presenter", "podcast");
    say("speech", "voice-over", "voiceover", "spoken-word");
    say("bass", "bass-guitar", "electric-bass", "double-bass", "upright-bass", "contrabass");
    say("kick", "kick-drum", "bass-drum", "bd");
    say("snare", "snare-drum", "sd");
    say("toms", "tom-tom", "tom-toms", "floor-tom", "rack-tom");
    say("overheads", "oh", "ohs", "cymbals");
    say("percussion", "hi-hat", "hihat", "hat", "hats", "shaker", "tambourine", "congas", "bongos");
    say("drum-bus", "drum-kit", "kit");
    say("keys", "synth", "synthesiser", "synthesizer", "organ", "keyboard", "electric-piano");
    say("strings", "violin", "violins", "viola", "cello", "string-section", "string-quartet");
    say("brass", "trumpet", "trombone", "horn", "horns", "tuba");
    say("woodwind", "flute", "clarinet", "oboe", "bassoon", "saxophone", "sax");
    say("mix-bus", "mix", "main-mix", "stereo-mix", "master", "master-bus");
    say("sub-mix", "group", "bus", "stem", "stems");
    say("effect-return", "reverb", "return", "effect", "effects", "fx");
    say("room", "ambience", "ambient");
  }

  private SourceWords() {}

  /**
   * Returns the kinds of source that a word may mean.
   *
   * @param word a word that is none of those known, in any case
   * @param known the words that exist
   * @return what the trade means by it, else those that it is near to; empty if neither is known
   */
  public static List<String> meant(String word, Collection<String> known) {
    List<String> said = KINDS.getOrDefault(word.toLowerCase(Locale.ROOT), List.of());
    return said.isEmpty() ? Nearest.to(word, known) : List.copyOf(said);
  }

  /**
   * Asks whether the trade says a word for what is recorded.
   *
   * @param word the word, in any case
   * @return whether it stands for a kind of source
   */
  static boolean isSaid(String word) {
    return KINDS.containsKey(word.toLowerCase(Locale.ROOT));
  }

  private static void say(String kind, String... words) {
    for (String word : words) {
      KINDS.computeIfAbsent(word, key -> new ArrayList<>()).add(kind);
    }
  }
}
