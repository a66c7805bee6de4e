package chainwright.notation.lowering;

import java.util.Collection;
import java.util.List;

/**
 * Words of the trade for what is recorded that are no kinds of source, and the kinds they mean.
 *
 * <p>Source: common practice, no source.
 */
public final class SourceWords {

  private static final SaidFor KINDS = new SaidFor();

  static {
    KINDS.say("lead-vocal", "vox", "voice", "singer", "singing");
    KINDS.say("backing-vocal", "vox", "bv", "bvs", "harmony", "harmonies");
    KINDS.say(
        "speech", "voice", "narration", "narrator", "dialogue", "dialog", "presenter", "podcast");
    KINDS.say("speech", "voice-over", "voiceover", "spoken-word");
    KINDS.say("bass", "bass-guitar", "electric-bass", "double-bass", "upright-bass", "contrabass");
    KINDS.say("kick", "kick-drum", "bass-drum", "bd");
    KINDS.say("snare", "snare-drum", "sd");
    KINDS.say("toms", "tom-tom", "tom-toms", "floor-tom", "rack-tom");
    KINDS.say("overheads", "oh", "ohs", "cymbals");
    KINDS.say(
        "percussion", "hi-hat", "hihat", "hat", "hats", "shaker", "tambourine", "congas", "bongos");
    KINDS.say("drum-bus", "drum-kit", "kit");
    KINDS.say("keys", "synth", "synthesiser", "synthesizer", "organ", "keyboard", "electric-piano");
    KINDS.say("strings", "violin", "violins", "viola", "cello", "string-section", "string-quartet");
    KINDS.say("brass", "trumpet", "trombone", "horn", "horns", "tuba");
    KINDS.say("woodwind", "flute", "clarinet", "oboe", "bassoon", "saxophone", "sax");
    KINDS.say("mix-bus", "mix", "main-mix", "stereo-mix", "master", "master-bus");
    KINDS.say("sub-mix", "group", "bus", "stem", "stems");
    KINDS.say("effect-return", "reverb", "return", "effect", "effects", "fx");
    KINDS.say("room", "ambience", "ambient");
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
    List<String> said = KINDS.of(word);
    return said.isEmpty() ? Nearest.to(word, known) : said;
  }

  /**
   * Asks whether the trade says a word for what is recorded.
   *
   * @param word the word, in any case
   * @return whether it stands for a kind of source
   */
  static boolean isSaid(String word) {
    return !KINDS.of(word).isEmpty();
  }
}
