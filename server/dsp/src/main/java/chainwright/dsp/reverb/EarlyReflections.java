package chainwright.dsp.reverb;

import java.util.Arrays;

/**
 * The first reflections of a room: single late copies of the sound of all channels, others for each
 * channel, which grow denser and softer.
 *
 * <p>Source: taps of a delay line, J. A. Moorer, "About This Reverberation Business", Computer
 * Music Journal 3(2), 1979; from memory. Their times are ours.
 */
final class EarlyReflections {

  /** The copies in each channel. */
  private static final int COUNT = 12;

  private final double[][] rings;

  /** How late each copy is [frames], [channel][copy]. */
  private final int[][] delays;

  private final double[][] factors;
  private int position;

  /**
   * Makes reflections of silence.
   *
   * @param channelCount the number of channels
   * @param firstFrames how late the first copy is about [frames]
   * @param lastFrames how late the last copy is at most [frames]
   * @param power the sum of the squares of the factors of each channel
   * @param fallDb how far the last is below the first [dB]
   */
  EarlyReflections(
      int channelCount, double firstFrames, double lastFrames, double power, double fallDb) {
    rings = new double[channelCount][(int) lastFrames + 2];
    delays = new int[channelCount][COUNT];
    factors = new double[channelCount][COUNT];
    for (int c = 0; c < channelCount; c++) {
      Scatter scatter = new Scatter(100 + c);
      double squares = 0;
      for (int k = 0; k < COUNT; k++) {
        // The number of reflections grows with the cube of time; a square is dense enough here.
        double share = Math.sqrt((k + scatter.next()) / COUNT);
        delays[c][k] = (int) (firstFrames + share * (lastFrames - firstFrames));
        double size = Math.pow(10, -fallDb * share / 20);
        factors[c][k] = scatter.next() < 0.5 && k > 0 ? -size : size;
        squares += size * size;
      }
      for (int k = 0; k < COUNT; k++) {
        factors[c][k] *= Math.sqrt(power / squares);
      }
    }
  }

  /** Adds the reflections of a block to another. */
  void process(double[][] in, double[][] out, int from, int count) {
    int length = rings[0].length;
    for (int i = 0; i < count; i++) {
      for (int c = 0; c < rings.length; c++) {
        rings[c][position] = in[c][i];
      }
      for (int c = 0; c < rings.length; c++) {
        double sum = 0;
        for (int k = 0; k < COUNT; k++) {
          int at = position - delays[c][k];
          sum += factors[c][k] * rings[(c + k) % rings.length][at < 0 ? at + length : at];
        }
        out[c][from + i] += sum;
      }
      position = position + 1 == length ? 0 : position + 1;
    }
  }

  /** Adds when the energy comes out that goes into the first channel, if there is no other. */
  void addEnergy(EnergyFlow flow, double[] energy, double[] to) {
    for (int k = 0; k < COUNT; k++) {
      flow.addLater(energy, delays[0][k], factors[0][k] * factors[0][k], to);
    }
  }

  void reset() {
    for (double[] ring : rings) {
      Arrays.fill(ring, 0);
    }
    position = 0;
  }
}
