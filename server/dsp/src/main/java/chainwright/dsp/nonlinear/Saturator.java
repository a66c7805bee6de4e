package chainwright.dsp.nonlinear;

import java.util.Objects;

/**
 * A running saturation of one channel, made by {@link SaturationModel#newProcessor}.
 *
 * <p>It runs at the rate it is given, and what the shaper makes above half that rate folds back:
 * oversampling is the caller's. The output does not depend on the size of blocks. A NaN sample
 * comes out as NaN, counts as silence and leaves nothing behind; infinities count as ±10¹⁵.
 */
public final class Saturator {

  private static final double LARGEST = 1e15;

  private final EmphasisSection.Running emphasis;
  private final Shaper shaper;
  private final double gain;
  private final EmphasisSection.Running deEmphasis;
  private final EmphasisSection.Running output;

  Saturator(
      EmphasisSection emphasis, DrivenShaper shaper, EmphasisSection output, double sampleRateHz) {
    if (!(sampleRateHz > 0) || Double.isInfinite(sampleRateHz)) {
      throw new IllegalArgumentException(
          "the sample rate must be finite and above 0, but was " + sampleRateHz);
    }
    this.emphasis = emphasis.newFilter(sampleRateHz);
    this.shaper = shaper.base();
    gain = Harmonics.toAmplitude(shaper.driveDb());
    deEmphasis = emphasis.inverse().newFilter(sampleRateHz);
    this.output = output.newFilter(sampleRateHz);
  }

  /** Returns to the initial state: silence. */
  public void reset() {
    emphasis.reset();
    deEmphasis.reset();
    output.reset();
  }

  /**
   * Saturates a block in place.
   *
   * @param samples the samples of the channel, full scale 1.0
   * @param offset the first sample of the block
   * @param length the number of samples; 0 changes nothing
   * @throws IndexOutOfBoundsException if the block does not lie within the array
   */
  public void process(double[] samples, int offset, int length) {
    Objects.checkFromIndexSize(offset, length, samples.length);
    for (int i = offset; i < offset + length; i++) {
      double sample = samples[i];
      double sound = Double.isNaN(sample) ? 0 : Math.max(-LARGEST, Math.min(LARGEST, sample));
      double shaped = shaper.shape(gain * emphasis.process(sound)) / gain;
      double saturated = output.process(deEmphasis.process(shaped));
      samples[i] = Double.isNaN(sample) ? sample : saturated;
    }
  }
}
