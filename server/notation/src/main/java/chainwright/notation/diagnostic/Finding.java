package chainwright.notation.diagnostic;

import chainwright.notation.fault.Fault;
import java.util.List;

/**
 * One thing that is said about a text.
 *
 * @param code its kebab-case code, which is also the name of its page
 * @param severity how grave it is
 * @param place the tightest span that is at fault
 * @param what what is the case, with the values found; one sentence without a full stop, begun with
 *     a capital letter, or with what is written in the text
 * @param why why that matters; one or two sentences
 * @param remedy what to do, likeliest first; one or two sentences
 * @param sources where the knowledge comes from, spelt for a reader; never empty for a rule of the
 *     trade ("common practice, no source" where there is none), empty for a matter of syntax
 * @param topic the words by which all of that is explained, such as "compressor ratio"; the code,
 *     unless the sources are those of one setting
 * @param related other places that have a part in it
 * @param fixes edits that mend it
 */
public record Finding(
    String code,
    Severity severity,
    Place place,
    String what,
    String why,
    String remedy,
    List<String> sources,
    String topic,
    List<Related> related,
    List<Fix> fixes) {

  /**
   * Another place that has a part in a finding.
   *
   * @param place where
   * @param what its part in it, such as "the de-esser stands here"
   */
  public record Related(Place place, String what) {

    /**
     * Sets the sentence.
     *
     * @param place where
     * @param what its part in it
     */
    public Related {
      what = Prose.set(what);
    }
  }

  /**
   * Copies the lists, and sets the sentences: a capital letter first, a minus sign outside of
   * backticks.
   *
   * @param code its code
   * @param severity how grave it is
   * @param place the span at fault
   * @param what what is the case
   * @param why why that matters
   * @param remedy what to do
   * @param sources where the knowledge comes from
   * @param topic the words by which it is explained
   * @param related other places
   * @param fixes edits that mend it
   */
  public Finding {
    what = Prose.sentence(what);
    why = Prose.sentence(why);
    remedy = Prose.sentence(remedy);
    sources = List.copyOf(sources);
    related = List.copyOf(related);
    fixes = List.copyOf(fixes);
  }

  /**
   * Makes a finding about the text itself, which needs no source.
   *
   * @param fault what is wrong
   * @param place the span at fault
   * @param what what is the case
   * @param why why that matters
   * @param remedy what to do
   * @param related other places
   * @param fixes edits that mend it
   * @return the finding
   */
  public static Finding ofText(
      Fault fault,
      Place place,
      String what,
      String why,
      String remedy,
      List<Related> related,
      List<Fix> fixes) {
    Severity severity = fault.isError() ? Severity.ERROR : Severity.WARNING;
    return new Finding(
        fault.code(), severity, place, what, why, remedy, List.of(), fault.code(), related, fixes);
  }
}
