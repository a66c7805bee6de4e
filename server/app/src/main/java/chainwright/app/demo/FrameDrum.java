package chainwright.app.demo;

import java.util.SplittableRandom;

/**
 * A brushed frame drum: the modes of a round membrane and the hiss of the brush.
 *
 * <p>Source of the modes: the zeros of the Bessel functions, relative to the lowest (Rayleigh, "The
 * Theory of Sound", chapter IX; computed). Their decays are ours.
 */
final class FrameDrum {

  private static final double[] MODES = {1, 1.593, 2.136, 2.295, 2.653, 2.917};

  private FrameDrum() {}

  /**
   * Adds a stroke.
   *
   * @param into the samples that it is added to
   * @param rateHz the sample rate [Hz]
   * @param startSeconds when it is struck [s]
   * @param lowestHz the lowest mode [Hz]
   * @param gain its level
   * @param seed the brush
   */
  static void add(
      double[] into, double rateHz, double startSeconds, double lowestHz, double gain, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Resonator brush = Resonator.of(rateHz, 3200, 2500);
    int start = (int) Math.round(startSeconds * rateHz);
    double lastNoise = 0;
    for (int i = start; i < Math.min(into.length, start + (int) rateHz); i++) {
      double since = (i - start) / rateHz;
      double sample = 0;
      for (int m = 0; m < MODES.length; m++) {
        sample +=
            Math.exp(-since * (6 + 5 * m))
                * Math.sin(2 * Math.PI * MODES[m] * lowestHz * since)
                / (1 + m);
      }
      double noise = random.nextDouble() - 0.5;
      double hiss = brush.process(noise - lastNoise);
      lastNoise = noise;
      into[i] += gain * (sample + 0.8 * Math.exp(-since * 18) * hiss);
    }
  }
}
