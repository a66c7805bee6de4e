package chainwright.engine.rules;

import chainwright.notation.diagnostic.Finding;
import java.util.function.Consumer;

/** A rule of the trade. An implementation has no state. */
public interface Rule {

  /**
   * Returns what is said about the rule wherever it is met.
   *
   * @return its code, severity, reason and sources
   */
  RuleCard card();

  /**
   * Checks one chain or bus.
   *
   * @param evidence what is known about it
   * @param report receives each finding
   */
  void check(Evidence evidence, Consumer<Finding> report);
}
