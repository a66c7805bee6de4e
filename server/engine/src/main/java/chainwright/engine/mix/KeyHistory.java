package chainwright.engine.mix;

import chainwright.dsp.signal.Wiring;

/**
 * What a detector hears of another node: the last frames of it, in time with what is meant, so that
 * its latency is no longer seen.
 */
final class KeyHistory implements Wiring.KeySignal {

  private final double[][] ring;
  private long end;

  /**
   * Makes a history of silence.
   *
   * @param channelCount how many channels the other has
   * @param latencyFrames how late the other's output is
   * @param capacityFrames how far back it reaches from the newest frame
   */
  KeyHistory(int channelCount, int latencyFrames, int capacityFrames) {
    ring = new double[channelCount][capacityFrames];
    end = -latencyFrames;
  }

  /** Takes the next block of what the other puts out. */
  void append(double[][] sound, int count) {
    for (int i = 0; i < count; i++) {
      long frame = end + i;
      if (frame >= 0) {
        int at = (int) (frame % ring[0].length);
        for (int c = 0; c < ring.length; c++) {
          ring[c][at] = sound[c][i];
        }
      }
    }
    end += count;
  }

  @Override
  public int channelCount() {
    return ring.length;
  }

  @Override
  public void read(long startFrame, double[][] into, int count) {
    long oldest = Math.max(0, startFrame);
    if (startFrame + count > Math.max(0, end) || oldest < end - ring[0].length) {
      throw new IllegalArgumentException(
          "the frames must lie between "
              + Math.max(0, end - ring[0].length)
              + " and "
              + end
              + ", but were "
              + startFrame
              + " to "
              + (startFrame + count));
    }
    for (int c = 0; c < ring.length; c++) {
      for (int i = 0; i < count; i++) {
        long frame = startFrame + i;
        into[c][i] = frame < 0 ? 0 : ring[c][(int) (frame % ring[c].length)];
      }
    }
  }
}
