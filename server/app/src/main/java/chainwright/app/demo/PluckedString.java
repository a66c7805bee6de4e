package chainwright.app.demo;

import java.util.SplittableRandom;

/**
 * A plucked string: a burst of noise that goes round in a delay line through a mean of neighbours.
 *
 * <p>Sources: K. Karplus and A. Strong, "Digital synthesis of plucked-string and drum timbres",
 * Computer Music Journal 7(2), 1983; the tuning by an all-pass, the loss in the loop, the softer
 * burst and the comb of the plucking point: D. Jaffe and J. Smith, "Extensions of the
 * Karplus-Strong plucked-string algorithm", in the same issue (both from memory).
 */
final class PluckedString {

  private PluckedString() {}

  /**
   * Adds a pluck.
   *
   * @param into the samples that it is added to
   * @param rateHz the sample rate [Hz]
   * @param startSeconds when it is plucked [s]
   * @param noteHz the note [Hz]
   * @param decaySeconds how long the lowest partial takes to fall by 60 dB [s]
   * @param softness how soft it is plucked, from 0 to below 1
   * @param gain the height of the burst
   * @param seed the burst
   */
  static void add(
      double[] into,
      double rateHz,
      double startSeconds,
      double noteHz,
      double decaySeconds,
      double softness,
      double gain,
      long seed) {
    double period = rateHz / noteHz;
    // The mean of two neighbours is half a frame late, and the all-pass what is left.
    int whole = (int) Math.floor(period - 0.5 - 0.1);
    double rest = period - 0.5 - whole;
    double allPass = (1 - rest) / (1 + rest);
    double loss = Math.pow(10, -3 / (noteHz * decaySeconds));
    double[] line = burst(whole, softness, gain, seed);
    double lastOut = 0;
    double lastIn = 0;
    double lastTuned = 0;
    int at = 0;
    for (int i = (int) Math.round(startSeconds * rateHz); i < into.length; i++) {
      double out = line[at];
      into[i] += out;
      double mean = loss * 0.5 * (out + lastOut);
      lastOut = out;
      double tuned = allPass * (mean - lastTuned) + lastIn;
      lastIn = mean;
      lastTuned = tuned;
      line[at] = tuned;
      at = at + 1 == whole ? 0 : at + 1;
    }
  }

  private static double[] burst(int frames, double softness, double gain, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] noise = new double[frames];
    double low = 0;
    double mean = 0;
    for (int i = 0; i < frames; i++) {
      low = softness * low + (1 - softness) * (2 * random.nextDouble() - 1);
      noise[i] = low;
      mean += low / frames;
    }
    int point = Math.max(1, frames / 5);
    double[] burst = new double[frames];
    for (int i = 0; i < frames; i++) {
      burst[i] = gain * (noise[i] - mean - (i >= point ? noise[i - point] - mean : 0));
    }
    return burst;
  }
}
