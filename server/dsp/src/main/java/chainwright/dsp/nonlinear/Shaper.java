package chainwright.dsp.nonlinear;

import java.util.List;
import java.util.Objects;

/** A memoryless non-linearity: each output sample depends on one input sample. */
public sealed interface Shaper
    permits TanhShaper,
        CubicShaper,
        ArctangentShaper,
        QuadraticShaper,
        HardClipShaper,
        SoftClipShaper,
        BiasedShaper,
        ShiftedShaper,
        DrivenShaper {

  /**
   * Returns the output for one sample.
   *
   * @param sample the input, full scale 1.0
   * @return the output; 0 for 0, NaN for NaN
   */
  double shape(double sample);

  /**
   * Returns the slope at an input: the gain that a small signal about it meets.
   *
   * @param sample the input, full scale 1.0
   * @return the derivative of the output; at a corner that of the side away from 0
   */
  double slope(double sample);

  /**
   * Returns the inputs at which a derivative jumps, such as −1 and 1 for a clip at full scale.
   *
   * @return the corners, rising; empty for smooth shapers
   */
  List<Double> corners();

  /**
   * Returns the harmonics of a sine sent through, by an exact formula where there is one, else by
   * quadrature of the Fourier integral.
   *
   * @param peakAmplitude the amplitude of the sine, full scale 1.0, finite, above 0
   * @param count the number of harmonics, ≥ 1; 1 is the fundamental alone
   * @return harmonics 1 to count, and the DC offset
   * @throws IllegalArgumentException if an argument is outside its range
   */
  default Harmonics harmonicsOfSine(double peakAmplitude, int count) {
    return FourierIntegral.harmonics(this, peakAmplitude, count);
  }

  /**
   * Shapes a block in place.
   *
   * @param samples the samples, full scale 1.0
   * @param offset the first sample of the block
   * @param length the number of samples; 0 changes nothing
   * @throws IndexOutOfBoundsException if the block does not lie within the array
   */
  default void process(double[] samples, int offset, int length) {
    Objects.checkFromIndexSize(offset, length, samples.length);
    for (int i = offset; i < offset + length; i++) {
      samples[i] = shape(samples[i]);
    }
  }
}
