package chainwright.dsp.dynamics;

import chainwright.dsp.signal.Wiring;
import java.util.Arrays;

/**
 * The gains of a running processor, frame by frame: from the key of each channel, of the loudest of
 * them, or of both in part.
 */
final class GainCourse {

  private final KeyInput.Running key;

  /** One a channel; none where all channels share one gain. */
  private final GainProcessor[] own;

  /** That of the loudest channel; null where each channel has its own alone. */
  private final GainProcessor shared;

  private final double link;
  private final double[][] gainDb;
  private final double[] loudest = new double[KeyInput.CHUNK_FRAMES];
  private final double[] commonDb = new double[KeyInput.CHUNK_FRAMES];

  /**
   * Starts the gains.
   *
   * @param link the share of the common gain [0, 1]; with a key from elsewhere all share one
   */
  GainCourse(GainControl control, double sampleRateHz, KeyInput input, double link, Wiring wiring) {
    key = input.start(wiring);
    int channelCount = wiring.channelCount();
    boolean isShared = key.isOther() || channelCount == 1 || link >= 1;
    this.link = isShared ? 1 : link;
    shared = control.newProcessor(sampleRateHz);
    own = new GainProcessor[isShared ? 0 : channelCount];
    for (int c = 0; c < own.length; c++) {
      own[c] = control.newProcessor(sampleRateHz);
    }
    gainDb = new double[isShared ? 1 : channelCount][KeyInput.CHUNK_FRAMES];
  }

  /** Returns the gains of the next frames [dB], [channel][frame]; one row if all share it. */
  double[][] next(double[][] channels, int from, int count) {
    double[][] keys = key.next(channels, from, count);
    findLoudest(keys, count);
    if (own.length == 0) {
      shared.gainsDb(loudest, gainDb[0], count);
      return gainDb;
    }
    shared.gainsDb(loudest, commonDb, count);
    for (int c = 0; c < own.length; c++) {
      own[c].gainsDb(keys[c], gainDb[c], count);
      for (int i = 0; i < count; i++) {
        gainDb[c][i] = link * commonDb[i] + (1 - link) * gainDb[c][i];
      }
    }
    return gainDb;
  }

  /** Finds the largest magnitude of each frame; NaN becomes silence. */
  private void findLoudest(double[][] keys, int count) {
    Arrays.fill(loudest, 0, count, 0);
    for (double[] channel : keys) {
      boolean hasNaN = false;
      for (int i = 0; i < count; i++) {
        hasNaN |= Double.isNaN(channel[i]);
      }
      for (int i = 0; hasNaN && i < count; i++) {
        channel[i] = Double.isNaN(channel[i]) ? 0 : channel[i];
      }
      for (int i = 0; i < count; i++) {
        loudest[i] = Math.max(loudest[i], Math.abs(channel[i]));
      }
    }
  }

  void reset() {
    key.reset();
    shared.reset();
    for (GainProcessor processor : own) {
      processor.reset();
    }
  }
}
