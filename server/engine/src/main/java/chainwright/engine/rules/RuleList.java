package chainwright.engine.rules;

import java.util.List;

/** Names every rule. A test holds the list to the folders of pages and examples. */
final class RuleList {

  static final List<Rule> ALL =
      List.of(
          new BoostBeyondHearing(),
          new BrightBoostAfterDeEss(),
          new BypassedLeftBehind(),
          new CompressBeforeDeEss(),
          new DitherIsLast(),
          new ExtremeValue(),
          new FrequencyAboveNyquist(),
          new GateAfterCompressor(),
          new NarrowBoost(),
          new OutsideLimits(),
          new OverSteepSlope(),
          new ReverbFeedsDynamics(),
          new UncommonValue(),
          new WideDeepCut());

  private RuleList() {}
}
