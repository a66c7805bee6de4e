package chainwright.dsp.filter;

import chainwright.quantity.SampleRate;

/** How a digital filter follows its analogue prototype. */
public enum Curve {

  /** The magnitude follows the prototype up to 0.45 of the sample rate. */
  ANALOGUE,

  /**
   * By the bilinear transform, exact at the corner frequency and bent toward half the rate.
   *
   * <p>Source: R. Bristow-Johnson, "Audio EQ Cookbook", W3C Group Note.
   */
  BILINEAR;

  /**
   * Designs the digital filter when it is first looked at, which for many is never. One whose
   * numbers are so far apart that its design could fail is designed at once.
   *
   * @param prototype what is meant
   * @param rate the sample rate of the signal to be filtered
   * @return the filter's response
   * @throws IllegalArgumentException if a corner is not below half the rate, or the design fails;
   *     this is told at once
   */
  public Response designLater(AnaloguePrototype prototype, SampleRate rate) {
    for (AnalogueSection section : prototype.sections()) {
      BilinearTransform.requireBelowNyquist(section.corner(), rate);
      if (!section.isModerate()) {
        return design(prototype, rate);
      }
    }
    return new LaterResponse(this, prototype, rate);
  }

  /**
   * Designs the digital filter.
   *
   * @param prototype what is meant
   * @param rate the sample rate of the signal to be filtered
   * @return the filter, stable
   * @throws IllegalArgumentException if a corner is not below half the rate
   */
  public FilterCascade design(AnaloguePrototype prototype, SampleRate rate) {
    return FilterCascade.of(
        rate,
        switch (this) {
          case ANALOGUE -> MagnitudeMatch.design(prototype, rate);
          case BILINEAR -> BilinearTransform.design(prototype, rate);
        });
  }
}
