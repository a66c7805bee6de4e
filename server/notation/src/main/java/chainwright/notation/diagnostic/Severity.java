package chainwright.notation.diagnostic;

/** How grave a finding is, gravest first. */
public enum Severity {
  /** The text means nothing, or doing what it says would damage the result. */
  ERROR,
  /** Probably harmful: look. */
  WARNING,
  /** Worth knowing. */
  INFO,
  /** A matter of tidiness or taste. */
  HINT
}
