package chainwright.dsp.nonlinear;

import java.util.List;
import java.util.Objects;

/**
 * A shaper between a gain and its inverse, y = f(g x) / g: more drive bends the wave more and
 * leaves a small signal as it is.
 *
 * @param base the shaper f
 * @param driveDb the gain g before it, taken off after it [dB], finite
 */
public record DrivenShaper(Shaper base, double driveDb) implements Shaper {

  /**
   * Checks the drive.
   *
   * @param base the shaper
   * @param driveDb the gain before it [dB]
   * @throws IllegalArgumentException if the drive is not finite
   */
  public DrivenShaper {
    if (!Double.isFinite(driveDb)) {
      throw new IllegalArgumentException("the drive must be finite, but was " + driveDb);
    }
  }

  /**
   * Returns the shaper driven so that a sine of this level has so much distortion, such as 0.3 % at
   * −18 dBFS.
   *
   * @param base the shaper
   * @param levelDbfs the level of the sine [dBFS, peak], finite
   * @param thdShare the wanted THD, relative to the fundamental, above 0; 0.003 is 0.3 %
   * @return the shaper with the smallest drive that gives it
   * @throws IllegalArgumentException if no drive from −120 dB to 120 dB gives so much
   */
  public static DrivenShaper ofThd(Shaper base, double levelDbfs, double thdShare) {
    double driveDb =
        DriveSolver.solve(
            drive -> Harmonics.analyze(new DrivenShaper(base, drive), levelDbfs).thdShare(),
            thdShare);
    return new DrivenShaper(base, driveDb);
  }

  @Override
  public double shape(double sample) {
    double gain = Harmonics.toAmplitude(driveDb);
    return base.shape(gain * sample) / gain;
  }

  @Override
  public double slope(double sample) {
    return base.slope(Harmonics.toAmplitude(driveDb) * sample);
  }

  @Override
  public List<Double> corners() {
    double gain = Harmonics.toAmplitude(driveDb);
    return base.corners().stream().map(corner -> corner / gain).toList();
  }

  @Override
  public void process(double[] samples, int offset, int length) {
    Objects.checkFromIndexSize(offset, length, samples.length);
    double gain = Harmonics.toAmplitude(driveDb);
    for (int i = offset; i < offset + length; i++) {
      samples[i] *= gain;
    }
    base.process(samples, offset, length);
    for (int i = offset; i < offset + length; i++) {
      samples[i] /= gain;
    }
  }

  /**
   * {@inheritDoc}
   *
   * <p>Source: those of the base at the driven amplitude, with the drive taken off.
   */
  @Override
  public Harmonics harmonicsOfSine(double peakAmplitude, int count) {
    double gain = Harmonics.toAmplitude(driveDb);
    return base.harmonicsOfSine(gain * peakAmplitude, count).scaledBy(1 / gain);
  }
}
