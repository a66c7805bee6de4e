package chainwright.dsp.nonlinear;

import java.util.List;
import java.util.Objects;

/**
 * A shaper moved off its middle, y = (f(x + b) − f(b)) / f′(b): asymmetric, with even harmonics.
 *
 * <p>The offset of silence is removed and a small signal keeps its gain of 1. The offset that a
 * sine itself causes remains, as {@link Harmonics#dcOffset}; a capacitor would remove it.
 *
 * @param base the symmetric shaper f
 * @param bias where its middle lies, b, in the input of the base; its slope there must be above 0
 */
public record BiasedShaper(Shaper base, double bias) implements Shaper {

  /**
   * Checks the bias.
   *
   * @param base the symmetric shaper
   * @param bias where its middle lies
   * @throws IllegalArgumentException if the bias is not finite, or the base is flat there
   */
  public BiasedShaper {
    if (!Double.isFinite(bias) || !(base.slope(bias) > 0)) {
      throw new IllegalArgumentException(
          "the bias must lie where the shaper rises, but was " + bias);
    }
  }

  @Override
  public double shape(double sample) {
    return (base.shape(sample + bias) - base.shape(bias)) / base.slope(bias);
  }

  @Override
  public double slope(double sample) {
    return base.slope(sample + bias) / base.slope(bias);
  }

  @Override
  public void process(double[] samples, int offset, int length) {
    Objects.checkFromIndexSize(offset, length, samples.length);
    for (int i = offset; i < offset + length; i++) {
      samples[i] += bias;
    }
    base.process(samples, offset, length);
    double silence = base.shape(bias);
    double gain = base.slope(bias);
    for (int i = offset; i < offset + length; i++) {
      samples[i] = (samples[i] - silence) / gain;
    }
  }

  @Override
  public List<Double> corners() {
    return base.corners().stream().map(corner -> corner - bias).toList();
  }
}
