package chainwright.dsp.nonlinear;

import java.util.List;
import java.util.Objects;

/**
 * A clip with a knee: the tips are rounded from half the knee below the ceiling to half of it
 * above, and never pass the ceiling.
 *
 * <p>In dB the knee is the parabola of a limiter's knee, taken sample by sample, so the slope is
 * continuous.
 *
 * <p>Source: the knee of Giannoulis, Massberg and Reiss, "Digital Dynamic Range Compressor Design",
 * JAES 60(6), 2012, eq. 4, without time constants; its use in a clipper is ours.
 *
 * @param ceilingDbfs the ceiling [dBFS, peak], finite
 * @param kneeWidthDb the full width of the knee [dB], finite, above 0
 */
public record SoftClipShaper(double ceilingDbfs, double kneeWidthDb) implements Shaper {

  private static final double DB_PER_NEPER = 20 / Math.log(10);

  /**
   * Checks the settings.
   *
   * @param ceilingDbfs the ceiling [dBFS, peak]
   * @param kneeWidthDb the full width of the knee [dB]
   * @throws IllegalArgumentException if a setting is outside its range
   */
  public SoftClipShaper {
    requireCeiling(ceilingDbfs);
    if (!(kneeWidthDb > 0) || Double.isInfinite(kneeWidthDb)) {
      throw new IllegalArgumentException(
          "the knee width must be finite and above 0 dB, but was " + kneeWidthDb);
    }
  }

  /** Throws unless the ceiling is finite. */
  static void requireCeiling(double ceilingDbfs) {
    if (!Double.isFinite(ceilingDbfs)) {
      throw new IllegalArgumentException("the ceiling must be finite, but was " + ceilingDbfs);
    }
  }

  @Override
  public double shape(double sample) {
    double magnitude = Math.abs(sample);
    double ceiling = Harmonics.toAmplitude(ceilingDbfs);
    double intoKneeDb = DB_PER_NEPER * Math.log(magnitude / ceiling) + kneeWidthDb / 2;
    if (intoKneeDb <= 0) {
      return sample;
    }
    if (intoKneeDb >= kneeWidthDb) {
      return Math.copySign(ceiling, sample);
    }
    double reductionDb = intoKneeDb * intoKneeDb / (2 * kneeWidthDb);
    double shaped = magnitude * Math.exp(-reductionDb / DB_PER_NEPER);
    return Math.copySign(Math.min(ceiling, shaped), sample);
  }

  @Override
  public double slope(double sample) {
    double intoKneeDb =
        DB_PER_NEPER * Math.log(Math.abs(sample) / Harmonics.toAmplitude(ceilingDbfs))
            + kneeWidthDb / 2;
    if (intoKneeDb <= 0) {
      return 1;
    }
    if (intoKneeDb >= kneeWidthDb) {
      return 0;
    }
    // d ln y / d ln x, times y/x.
    return (1 - intoKneeDb / kneeWidthDb) * shape(sample) / sample;
  }

  @Override
  public void process(double[] samples, int offset, int length) {
    Objects.checkFromIndexSize(offset, length, samples.length);
    // Most samples lie below the knee, which takes no logarithm to see; the margin is for rounding.
    double surelyBelow = Harmonics.toAmplitude(ceilingDbfs - kneeWidthDb / 2) * (1 - 1e-12);
    for (int i = offset; i < offset + length; i++) {
      if (!(Math.abs(samples[i]) < surelyBelow)) {
        samples[i] = shape(samples[i]);
      }
    }
  }

  @Override
  public List<Double> corners() {
    double start = Harmonics.toAmplitude(ceilingDbfs - kneeWidthDb / 2);
    double end = Harmonics.toAmplitude(ceilingDbfs + kneeWidthDb / 2);
    return List.of(-end, -start, start, end);
  }
}
