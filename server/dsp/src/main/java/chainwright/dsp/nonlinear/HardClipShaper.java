package chainwright.dsp.nonlinear;

import java.util.List;
import java.util.Objects;

/**
 * A clip without a knee: the wave up to its ceiling, and the ceiling beyond.
 *
 * @param ceilingDbfs the ceiling [dBFS, peak], finite
 */
public record HardClipShaper(double ceilingDbfs) implements Shaper {

  /**
   * Checks the ceiling.
   *
   * @param ceilingDbfs the ceiling [dBFS, peak]
   * @throws IllegalArgumentException if it is not finite
   */
  public HardClipShaper {
    SoftClipShaper.requireCeiling(ceilingDbfs);
  }

  @Override
  public double shape(double sample) {
    double ceiling = Harmonics.toAmplitude(ceilingDbfs);
    return Math.max(-ceiling, Math.min(ceiling, sample));
  }

  @Override
  public double slope(double sample) {
    return Double.isNaN(sample)
        ? sample
        : Math.abs(sample) < Harmonics.toAmplitude(ceilingDbfs) ? 1 : 0;
  }

  @Override
  public List<Double> corners() {
    double ceiling = Harmonics.toAmplitude(ceilingDbfs);
    return List.of(-ceiling, ceiling);
  }

  @Override
  public void process(double[] samples, int offset, int length) {
    Objects.checkFromIndexSize(offset, length, samples.length);
    double ceiling = Harmonics.toAmplitude(ceilingDbfs);
    for (int i = offset; i < offset + length; i++) {
      samples[i] = Math.max(-ceiling, Math.min(ceiling, samples[i]));
    }
  }

  /**
   * {@inheritDoc}
   *
   * <p>Source: the Fourier integral of d sin θ up to the clip angle arcsin(1/d) and of the ceiling
   * beyond; for n = 1 it is (2/π)(d arcsin(1/d) + √(1 − 1/d²)).
   */
  @Override
  public Harmonics harmonicsOfSine(double peakAmplitude, int count) {
    Harmonics.requireSine(peakAmplitude, count);
    double ceiling = Harmonics.toAmplitude(ceilingDbfs);
    double drive = peakAmplitude / ceiling;
    if (drive <= 1) {
      return Harmonics.ofOddSines(count, n -> n == 1 ? peakAmplitude : 0);
    }
    double angle = Math.asin(1 / drive);
    return Harmonics.ofOddSines(
        count,
        n -> {
          double below =
              n == 1
                  ? angle - Math.sin(2 * angle) / 2
                  : Math.sin((n - 1) * angle) / (n - 1) - Math.sin((n + 1) * angle) / (n + 1);
          return ceiling * 4 / Math.PI * (drive / 2 * below + Math.cos(n * angle) / n);
        });
  }
}
