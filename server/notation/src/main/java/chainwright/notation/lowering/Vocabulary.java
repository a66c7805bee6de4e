package chainwright.notation.lowering;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The words of the notation itself, which are no stages: what each says and how it is written.
 *
 * <p>Source: the notation's own reference page.
 */
public final class Vocabulary {

  /** Where a word may open a statement, or a clause. */
  public enum Place {
    /** At the top of a file. */
    TOP,
    /** In a session. */
    SESSION,
    /** In a chain or a bus, before its stages. */
    DECLARATION,
    /** Among the stages, holding further stages. */
    STRUCTURE,
    /** In the structure that it belongs to. */
    PART,
    /** At the end of a statement. */
    CLAUSE
  }

  /**
   * A word.
   *
   * @param text the word
   * @param place where it stands
   * @param says what it says, one sentence
   * @param form how it is written, such as {@code take "takes/vocal.wav" 0:12 to 0:48}
   */
  public record Keyword(String text, Place place, String says, String form) {}

  private static final List<Keyword> KEYWORDS =
      List.of(
          top(
              "import",
              "Makes the presets, chains and buses of another file known here.",
              "import \"presets.chain\""),
          top(
              "session",
              "Says what holds for all chains: sample rate, analogue alignment, tempo.",
              "session \"Ferry night\" { sample-rate 48 kHz }"),
          top(
              "preset",
              "Gives a name to stages, to be applied in chains.",
              "preset rumble-guard { high-pass 60 Hz 12 dB/oct }"),
          top(
              "chain",
              "The stages of one track, in the order of the signal.",
              "chain lead \"Lead vocal\" { source lead-vocal }"),
          top("bus", "A sum of chains, with stages of its own.", "bus vocals { to mix }"),
          session("sample-rate", "The sample rate that the chains run at.", "sample-rate 48 kHz"),
          session(
              "alignment",
              "The digital level that an analogue level stands for.",
              "alignment 0 dBu = -18 dBFS"),
          session("mains", "The frequency of the mains, for hum.", "mains 50 Hz"),
          session("tempo", "The tempo, for echoes.", "tempo 92 bpm"),
          session(
              "listeners",
              "For whom it is played; minors lower the cautions' limits.",
              "listeners adults"),
          declared(
              "source",
              "What is recorded on this track; ranges and zones follow from it.",
              "source lead-vocal"),
          declared(
              "spill",
              "What else this microphone hears, and how much softer.",
              "spill acoustic-guitar -12 dB"),
          declared(
              "take",
              "The recording, and the passage of it that counts.",
              "take \"takes/vocal.wav\" 0:12 to 0:48"),
          declared("lowest-note", "The lowest note that is played or sung.", "lowest-note A2"),
          declared("group", "The microphones that share this sound.", "group drum-kit"),
          declared("intent", "What it is meant to sound like.", "intent natural"),
          declared("to", "The bus it goes to, and the fader on the way.", "to vocals fader -3 dB"),
          declared("send", "A copy sent to a bus as well.", "send plate -14 dB post-fader"),
          declared(
              "max-true-peak",
              "The true-peak level that must not be exceeded.",
              "max-true-peak -1 dBTP"),
          declared("loudness", "The integrated loudness it is delivered at.", "loudness -16 LUFS"),
          declared(
              "listen",
              "A place to listen to, and what for.",
              "listen 0:31.2 to 0:31.8 \"the held vowel\""),
          structure("apply", "All stages of a preset, in its order.", "apply rumble-guard"),
          structure(
              "insert",
              "An analogue device: levels out and back, latency, and what it does.",
              "insert \"outboard equaliser\" send 0 dBu return 0 dBu latency 1.6 ms"),
          structure(
              "parallel",
              "Paths that all receive the signal and are added again.",
              "parallel { … }"),
          structure(
              "mid-side",
              "Stages for the middle and for the side of a stereo signal.",
              "mid-side { … }"),
          structure(
              "multiband",
              "Bands that are processed separately and added again.",
              "multiband { … }"),
          structure(
              "during",
              "Stages for one passage only.",
              "during 0:31.2 to 0:31.8 { bell 2.9 kHz -3 dB Q 3 }"),
          part("path", "One of the parallel paths.", "path \"squashed\" -10 dB { … }"),
          part("mid", "The middle: what both channels share.", "mid { … }"),
          part("side", "The side: what differs between the channels.", "side { … }"),
          part("band", "One band of the split.", "band 200 Hz to 3 kHz { … }"),
          part(
              "side-chain",
              "What happens to the signal that the detector hears.",
              "side-chain { high-pass 120 Hz }"),
          part("note", "A note about the statement above.", "note \"why this is here\""),
          clause("as", "Gives the stage a name, unique in its chain.", "as bite"),
          clause("bypassed", "Keeps the line and takes it out of the path.", "bypassed"),
          clause(
              "deliberate",
              "Says that a rule is broken on purpose, and why.",
              "deliberate over-steep-slope \"only traffic below 60 Hz\""));

  private static final Map<String, Keyword> BY_TEXT = new HashMap<>();

  static {
    for (Keyword keyword : KEYWORDS) {
      BY_TEXT.putIfAbsent(keyword.text(), keyword);
    }
  }

  private Vocabulary() {}

  /**
   * Returns every word of the notation that is no stage.
   *
   * @return the words, in the order of a file
   */
  public static List<Keyword> all() {
    return KEYWORDS;
  }

  /**
   * Returns the words that may stand at a place.
   *
   * @param place the place
   * @return the words
   */
  public static List<Keyword> at(Place place) {
    return KEYWORDS.stream().filter(keyword -> keyword.place() == place).toList();
  }

  /**
   * Finds a word.
   *
   * @param text the word
   * @return what is known of it, or empty
   */
  public static Optional<Keyword> find(String text) {
    return Optional.ofNullable(BY_TEXT.get(text));
  }

  private static Keyword top(String text, String says, String form) {
    return new Keyword(text, Place.TOP, says, form);
  }

  private static Keyword session(String text, String says, String form) {
    return new Keyword(text, Place.SESSION, says, form);
  }

  private static Keyword declared(String text, String says, String form) {
    return new Keyword(text, Place.DECLARATION, says, form);
  }

  private static Keyword structure(String text, String says, String form) {
    return new Keyword(text, Place.STRUCTURE, says, form);
  }

  private static Keyword part(String text, String says, String form) {
    return new Keyword(text, Place.PART, says, form);
  }

  private static Keyword clause(String text, String says, String form) {
    return new Keyword(text, Place.CLAUSE, says, form);
  }
}
