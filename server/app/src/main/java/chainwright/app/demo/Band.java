package chainwright.app.demo;

/**
 * A band-pass with a gain of 1 at its centre.
 *
 * <p>Source: R. Bristow-Johnson, "Audio EQ Cookbook", W3C Group Note, band-pass with a peak gain of
 * 0 dB.
 */
final class Band {

  private Band() {}

  /**
   * Adds a band of a sound to it, as a room or a body does that rings there.
   *
   * @param samples the sound, changed in place
   * @param rateHz the sample rate [Hz]
   * @param centreHz the centre [Hz]
   * @param quality the centre divided by the width 3 dB down
   * @param gain how much of the band is added; negative takes away
   */
  static void add(double[] samples, double rateHz, double centreHz, double quality, double gain) {
    double turn = 2 * Math.PI * centreHz / rateHz;
    double alpha = Math.sin(turn) / (2 * quality);
    double b = alpha / (1 + alpha);
    double a1 = -2 * Math.cos(turn) / (1 + alpha);
    double a2 = (1 - alpha) / (1 + alpha);
    double x1 = 0;
    double x2 = 0;
    double y1 = 0;
    double y2 = 0;
    for (int i = 0; i < samples.length; i++) {
      double x = samples[i];
      double y = b * (x - x2) - a1 * y1 - a2 * y2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      samples[i] += gain * y;
    }
  }
}
