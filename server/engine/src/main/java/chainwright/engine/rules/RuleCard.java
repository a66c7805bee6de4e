package chainwright.engine.rules;

import chainwright.notation.diagnostic.Severity;
import java.util.List;

/**
 * What is said about a rule wherever it is met.
 *
 * @param code its kebab-case name, that of the fault, such as "bright-boost-after-de-ess"
 * @param severity how grave a finding is unless the house decides otherwise
 * @param title the fault in a few words
 * @param why why it matters; one or two sentences
 * @param sources the keys of its citations in the catalogue; "CP" for common practice
 */
public record RuleCard(
    String code, Severity severity, String title, String why, List<String> sources) {

  /**
   * Copies the sources.
   *
   * @param code its name
   * @param severity how grave it is
   * @param title the fault in a few words
   * @param why why it matters
   * @param sources the keys of its citations
   */
  public RuleCard {
    sources = List.copyOf(sources);
  }
}
