package chainwright.dsp.spectral;

import chainwright.dsp.signal.Processor;
import java.util.Arrays;

/**
 * Takes a signal apart into frames that overlap by three quarters, has their spectra changed, and
 * adds them up again.
 *
 * <p>The root of a Hann window stands before and behind the change; where nothing is changed the
 * four squares add up to a constant, and the signal comes back as it was but for rounding. It comes
 * later by one frame. Frames lie at fixed places of the signal. Source: D. W. Griffin, J. S. Lim,
 * "Signal Estimation from Modified Short-Time Fourier Transform", IEEE Transactions on Acoustics,
 * Speech, and Signal Processing 32(2), 1984; from memory.
 */
public final class FrameOverlap implements Processor {

  private static final int OVERLAP = 4;

  private final SpectrumStage stage;
  private final FourierTransform transform;
  private final int length;
  private final int hop;
  private final double[] window;
  private final double[][] past;
  private final double[][] sum;
  private final double[][] re;
  private final double[][] im;
  private final double[] frame;

  /** How much of the newest quarter has come. */
  private int filled;

  private boolean isQuarterSilent;

  /** How many quarters in a row were not silent. */
  private int soundingQuarters;

  /**
   * Prepares frames.
   *
   * @param stage what changes their spectra
   * @param channelCount the number of channels, ≥ 1
   * @param length the length of a frame [frames of the signal], a power of two, ≥ 16
   */
  public FrameOverlap(SpectrumStage stage, int channelCount, int length) {
    this.stage = stage;
    this.length = length;
    hop = length / OVERLAP;
    transform = new FourierTransform(length);
    window = new double[length];
    for (int i = 0; i < length; i++) {
      window[i] = Math.sin(Math.PI * i / length);
    }
    past = new double[channelCount][length];
    sum = new double[channelCount][length];
    re = new double[channelCount][transform.binCount()];
    im = new double[channelCount][transform.binCount()];
    frame = new double[length];
    reset();
  }

  @Override
  public void process(double[][] channels, int from, int to) {
    int at = from;
    while (at < to) {
      int count = Math.min(to - at, hop - filled);
      for (int c = 0; c < past.length; c++) {
        double[] channel = channels[c];
        int next = length - hop + filled;
        for (int i = 0; i < count; i++) {
          double sample = channel[at + i];
          isQuarterSilent &= sample == 0;
          past[c][next + i] = sample;
          channel[at + i] = sum[c][filled + i];
        }
      }
      filled += count;
      at += count;
      if (filled == hop) {
        turn();
      }
    }
  }

  private void turn() {
    soundingQuarters = isQuarterSilent ? 0 : soundingQuarters + 1;
    isQuarterSilent = true;
    filled = 0;
    for (double[] channel : sum) {
      System.arraycopy(channel, hop, channel, 0, length - hop);
      Arrays.fill(channel, length - hop, length, 0);
    }
    for (int c = 0; c < past.length; c++) {
      for (int i = 0; i < length; i++) {
        frame[i] = window[i] * past[c][i];
      }
      transform.forward(frame, re[c], im[c]);
      System.arraycopy(past[c], hop, past[c], 0, length - hop);
    }
    stage.process(re, im, soundingQuarters >= OVERLAP);
    for (int c = 0; c < past.length; c++) {
      transform.inverse(re[c], im[c], frame);
      for (int i = 0; i < length; i++) {
        // The squares of four roots of Hann windows add up to 2.
        sum[c][i] += window[i] * frame[i] / 2;
      }
    }
  }

  @Override
  public void reset() {
    for (int c = 0; c < past.length; c++) {
      Arrays.fill(past[c], 0);
      Arrays.fill(sum[c], 0);
    }
    filled = 0;
    isQuarterSilent = true;
    soundingQuarters = 0;
    stage.reset();
  }
}
