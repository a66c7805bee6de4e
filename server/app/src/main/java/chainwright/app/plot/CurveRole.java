package chainwright.app.plot;

/** What a curve stands for; each role has a line of its own that needs no colour to be told. */
public enum CurveRole {
  /** The stage asked about: a solid line, the heaviest. */
  STAGE,
  /** All stages up to and including this one: a dashed line. */
  CHAIN_SO_FAR,
  /** What the stage is held against, such as the analogue prototype: a thin dotted line. */
  COMPARISON,
  /** The way back of a stage with hysteresis, such as a closing gate: a line of long dashes. */
  RETURN,
  /**
   * One of the ways that a sum is made of, such as a band: a thin line. In a plot with several,
   * each has a dash of its own, and in characters a number.
   */
  BRANCH
}
