package chainwright.dsp.repair;

import chainwright.dsp.spectral.SpectrumStage;
import java.util.Arrays;

/**
 * Turns down the bins in which there is only noise; all channels alike, by the sum of their powers.
 *
 * <p>A frame waits until those after it are known, so that the noise is known from the start of a
 * recording.
 */
final class NoiseReduction implements SpectrumStage {

  private final NoiseFloor noise;
  private final NoiseGain gain;
  private final double[] power;
  private final double[] gains;

  /** Frames that wait: [frame][real, imaginary][channel][bin]. */
  private final double[][][][] waiting;

  private int next;

  NoiseReduction(
      NoiseFloor noise, NoiseGain gain, int channelCount, int binCount, int lookAheadFrames) {
    this.noise = noise;
    this.gain = gain;
    power = new double[binCount];
    gains = new double[binCount];
    waiting = new double[lookAheadFrames][2][channelCount][binCount];
  }

  @Override
  public void process(double[][] re, double[][] im, boolean isWhole) {
    if (isWhole) {
      sumPowers(re, im);
      noise.learn(power);
    }
    for (int c = 0; c < re.length; c++) {
      exchange(waiting[next][0][c], re[c]);
      exchange(waiting[next][1][c], im[c]);
    }
    next = (next + 1) % waiting.length;
    if (noise.isKnown()) {
      sumPowers(re, im);
      gain.find(power, noise.power(), gains);
      for (int c = 0; c < re.length; c++) {
        for (int k = 0; k < gains.length; k++) {
          re[c][k] *= gains[k];
          im[c][k] *= gains[k];
        }
      }
    }
  }

  private static void exchange(double[] a, double[] b) {
    for (int k = 0; k < a.length; k++) {
      double kept = a[k];
      a[k] = b[k];
      b[k] = kept;
    }
  }

  private void sumPowers(double[][] re, double[][] im) {
    Arrays.fill(power, NoiseFloor.LEAST_POWER);
    for (int c = 0; c < re.length; c++) {
      for (int k = 0; k < power.length; k++) {
        power[k] += re[c][k] * re[c][k] + im[c][k] * im[c][k];
      }
    }
  }

  @Override
  public void reset() {
    noise.reset();
    gain.reset();
    for (double[][][] frame : waiting) {
      for (double[][] part : frame) {
        for (double[] channel : part) {
          Arrays.fill(channel, 0);
        }
      }
    }
    next = 0;
  }
}
