package chainwright.engine.rules;

import java.util.List;

/** Names every rule. A test holds the list to the folders of pages and examples. */
final class RuleList {

  static final List<Rule> ALL =
      List.of(
          new BoostBeyondHearing(),
          new BypassedLeftBehind(),
          new ExtremeValue(),
          new FrequencyAboveNyquist(),
          new NarrowBoost(),
          new OutsideLimits(),
          new OverSteepSlope(),
          new UncommonValue(),
          new WideDeepCut());

  private RuleList() {}
}
