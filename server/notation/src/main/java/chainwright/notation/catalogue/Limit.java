package chainwright.notation.catalogue;

/** One end of what a setting can mean at all; beyond it the text is an error. */
public sealed interface Limit {

  /** No limit on this side. */
  record Open() implements Limit {}

  /**
   * A fixed value.
   *
   * @param value in the setting's unit
   */
  record Fixed(double value) implements Limit {}

  /**
   * A share of the sample rate, such as 0.499 of it.
   *
   * @param share the share, from 0 to 0.5
   */
  record OfSampleRate(double share) implements Limit {}

  /**
   * Another setting of the same stage.
   *
   * @param name that setting's name
   */
  record OfSetting(String name) implements Limit {}
}
