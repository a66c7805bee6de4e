package chainwright.notation.catalogue;

/** What holds where a setting is not written. */
public sealed interface Default {

  /** The setting must be written. */
  record Required() implements Default {}

  /** Nothing holds: the stage does without it. */
  record Absent() implements Default {}

  /**
   * Nothing holds, for the setting says in another way what another one says; only one of both can
   * be written.
   *
   * @param other the name of the other one
   */
  record InsteadOf(String other) implements Default {}

  /**
   * A number in the setting's unit.
   *
   * @param value the number
   */
  record Amount(double value) implements Default {}

  /**
   * One of the setting's words.
   *
   * @param word the word
   */
  record Word(String word) implements Default {}

  /**
   * A value that is computed.
   *
   * @param how how, in words, such as "0.8 x the lowest note"
   */
  record Computed(String how) implements Default {}
}
