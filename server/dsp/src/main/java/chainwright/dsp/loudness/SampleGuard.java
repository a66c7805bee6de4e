package chainwright.dsp.loudness;

/**
 * Stands before a meter: checks a caller's blocks and hands them on in pieces, with what is no
 * audio replaced by silence.
 */
final class SampleGuard {

  /** The longest piece [samples of each channel]: 8 KiB a channel, which stays in the cache. */
  static final int LONGEST_PIECE = 1024;

  /** 200 dB above full scale: the squares of such samples still have room to be summed. */
  private static final double LARGEST = 1e10;

  /** −3000 dBFS: squares are not yet subnormal numbers, which are slow. */
  private static final double SMALLEST = 1e-150;

  private final double[][] piece;
  private long frameCount;
  private long rejectedCount;

  SampleGuard(int channelCount) {
    if (channelCount < 1) {
      throw new IllegalArgumentException(
          "the number of channels must be at least 1, but was " + channelCount);
    }
    piece = new double[channelCount][LONGEST_PIECE];
  }

  /** Hands a block on. */
  void pass(double[][] channels, int offset, int length, FrameSink sink) {
    require(channels, offset, length);
    int done = 0;
    while (done < length) {
      int count = Math.min(LONGEST_PIECE, length - done);
      for (int c = 0; c < piece.length; c++) {
        rejectedCount += copy(channels[c], offset + done, piece[c], count);
      }
      sink.take(piece, count);
      done += count;
    }
    frameCount += length;
  }

  private static int copy(double[] from, int offset, double[] to, int count) {
    int rejected = 0;
    for (int i = 0; i < count; i++) {
      double sample = from[offset + i];
      double magnitude = Math.abs(sample);
      if (!(magnitude <= LARGEST)) {
        rejected++;
        sample = 0;
      } else if (magnitude < SMALLEST) {
        sample = 0;
      }
      to[i] = sample;
    }
    return rejected;
  }

  private void require(double[][] channels, int offset, int length) {
    if (channels.length != piece.length) {
      throw new IllegalArgumentException(
          "the number of channels must be " + piece.length + ", but was " + channels.length);
    }
    for (double[] channel : channels) {
      if (offset < 0 || length < 0 || offset > channel.length - length) {
        throw new IllegalArgumentException(
            "the block must lie within the array of "
                + channel.length
                + " samples, but was "
                + length
                + " samples from "
                + offset);
      }
    }
  }

  int channelCount() {
    return piece.length;
  }

  /** How many samples of each channel went through. */
  long frameCount() {
    return frameCount;
  }

  /** How many samples were no audio, over all channels. */
  long rejectedCount() {
    return rejectedCount;
  }

  void reset() {
    frameCount = 0;
    rejectedCount = 0;
  }
}
