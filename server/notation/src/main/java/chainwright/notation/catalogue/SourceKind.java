package chainwright.notation.catalogue;

import java.util.List;
import java.util.Optional;

/**
 * A kind of source, such as {@code lead-vocal}.
 *
 * @param word the word written after {@code source}
 * @param title how it is called in a sentence, such as "lead vocal"
 * @param lowestHz its usual lowest fundamental [Hz]
 * @param lowestNote the note of that frequency, such as "E2"
 * @param highestHz its usual highest fundamental [Hz]
 * @param note what to know about its range
 * @param crestLowDb the lower end of its usual crest factor [dB]
 * @param crestHighDb the upper end of its usual crest factor [dB]
 * @param spill how much of other instruments its microphone usually hears
 * @param like the kind whose ranges apply where a stage has none for this one
 * @param zones the named regions of its spectrum, lowest first
 */
public record SourceKind(
    String word,
    String title,
    double lowestHz,
    String lowestNote,
    double highestHz,
    String note,
    double crestLowDb,
    double crestHighDb,
    String spill,
    Optional<String> like,
    List<Zone> zones) {

  /**
   * Copies the zones.
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
   */
  public SourceKind {
    zones = List.copyOf(zones);
  }
}
