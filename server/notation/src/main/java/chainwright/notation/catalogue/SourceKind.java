package chainwright.notation.catalogue;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A kind of source, such as {@code lead-vocal}.
 *
 * @param word the word written after {@code source}
 * @param title how it is called in a sentence, such as "lead vocal"
 * @param lowestHz its usual lowest fundamental [Hz]; empty where nothing can be said
 * @param lowestNote the note of that frequency, such as "E2"; empty text where it is none
 * @param highestHz its usual highest fundamental [Hz]
 * @param note what to know about its range
 * @param crestLowDb the lower end of its usual crest factor [dB]
 * @param crestHighDb the upper end of its usual crest factor [dB]
 * @param spill how much of other instruments its microphone usually hears
 * @param like the kind whose ranges apply where a stage has none for this one
 * @param zones the named regions of its spectrum, lowest first
 * @param citations where its numbers come from; not empty
 */
public record SourceKind(
    String word,
    String title,
    OptionalDouble lowestHz,
    String lowestNote,
    double highestHz,
    String note,
    double crestLowDb,
    double crestHighDb,
    String spill,
    Optional<String> like,
    List<Zone> zones,
    List<Citation> citations) {

  /**
   * Copies the lists.
   *
   * @param word the word
   * @param title its name
   * @param lowestHz its lowest fundamental [Hz]
   * @param lowestNote the note of that frequency
   * @param highestHz its highest fundamental [Hz]
   * @param note what to know
   * @param crestLowDb the lower crest factor [dB]
   * @param crestHighDb the upper crest factor [dB]
   * @param spill the usual spill
   * @param like the kind it follows
   * @param zones its zones
   * @param citations where its numbers come from
   */
  public SourceKind {
    zones = List.copyOf(zones);
    citations = List.copyOf(citations);
  }

  /**
   * Asks whether it stands for all that has no kind of its own.
   *
   * @return whether nothing is known of it
   */
  public boolean isUnknown() {
    return word.equals("other");
  }

  /**
   * Names it in a sentence, behind "for".
   *
   * @return such as "lead vocal"; "any source" where nothing is known of it
   */
  public String inWords() {
    return isUnknown() ? "any source" : title.toLowerCase(Locale.ROOT);
  }

  /**
   * Names kinds in a sentence.
   *
   * @param kinds the kinds
   * @return such as "lead-vocal, kick"
   */
  public static String inWords(List<SourceKind> kinds) {
    return String.join(", ", kinds.stream().map(SourceKind::word).toList());
  }
}
