package chainwright.dsp.dynamics;

import chainwright.dsp.signal.Wiring;

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
    if (keys.length == 1) {
      for (int i = 0; i < count; i++) {
        gainDb[0][i] = shared.gainDb(keys[0][i]);
      }
      return gainDb;
    }
    for (int i = 0; i < count; i++) {
      double commonDb = shared.gainDb(loudest(keys, i));
      if (own.length == 0) {
        gainDb[0][i] = commonDb;
      } else {
        for (int c = 0; c < own.length; c++) {
          gainDb[c][i] = link * commonDb + (1 - link) * own[c].gainDb(keys[c][i]);
        }
      }
    }
    return gainDb;
  }

  private static double loudest(double[][] keys, int index) {
    double loudest = 0;
    for (double[] channel : keys) {
      double magnitude = Math.abs(channel[index]);
      loudest = magnitude > loudest ? magnitude : loudest;
    }
    return loudest;
  }

  void reset() {
    key.reset();
    shared.reset();
    for (GainProcessor processor : own) {
      processor.reset();
    }
  }
}
