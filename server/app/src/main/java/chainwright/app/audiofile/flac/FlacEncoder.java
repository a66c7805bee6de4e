package chainwright.app.audiofile.flac;

import java.util.Arrays;

/**
 * Codes blocks of samples as the frames of a FLAC file, all of one size but the last.
 *
 * <p>Two channels are coded as they are or as one and the difference, whichever is shorter. Not for
 * use by several threads at once.
 */
public final class FlacEncoder {

  /** The size of each block but the last [frames]. */
  public static final int BLOCK_FRAMES = 4096;

  /** The longest file that the format can describe [frames]. */
  public static final long MOST_FRAMES = (1L << 36) - 1;

  private static final int[] CODED_BITS = {0, 8, 12, -1, 16, 20, 24, 32};
  private static final int[] CODED_RATES_HZ = {
    -1, 88200, 176400, 192000, 8000, 16000, 22050, 24000, 32000, 44100, 48000, 96000
  };

  private final int sampleRateHz;
  private final int channels;
  private final int bits;
  private final SubframeEncoder subframes = new SubframeEncoder();
  private final BitWriter frame = new BitWriter();
  private final BitWriter[] coded;
  private final long[] middle = new long[BLOCK_FRAMES];
  private final long[] side = new long[BLOCK_FRAMES];
  private final SampleSum sum;
  private long blocks;
  private long frames;
  private int minFrameBytes = Integer.MAX_VALUE;
  private int maxFrameBytes;

  /**
   * Makes an encoder.
   *
   * @param sampleRateHz the sample rate [Hz], 1 to 1048575
   * @param channels how many channels, 1 to 8
   * @param bits how many bits a sample has, 4 to 32
   * @throws IllegalArgumentException if the format has no such samples
   */
  public FlacEncoder(int sampleRateHz, int channels, int bits) {
    if (sampleRateHz < 1
        || sampleRateHz >= 1 << 20
        || channels < 1
        || channels > 8
        || bits < 4
        || bits > 32) {
      throw new IllegalArgumentException(
          "FLAC holds 1 to 8 channels of 4 to 32 bits, but there were "
              + channels
              + " of "
              + bits
              + " at "
              + sampleRateHz
              + " Hz");
    }
    this.sampleRateHz = sampleRateHz;
    this.channels = channels;
    this.bits = bits;
    this.sum = new SampleSum(bits);
    this.coded = new BitWriter[Math.max(channels, 4)];
    for (int i = 0; i < coded.length; i++) {
      coded[i] = new BitWriter();
    }
  }

  /**
   * Codes a block.
   *
   * @param planes a plane a channel, with integers of as many bits
   * @param count how many frames: {@value #BLOCK_FRAMES}, or 1 to that in the last block
   * @return the bytes of the frame, a new array
   * @throws IllegalArgumentException if the block has another size
   */
  public byte[] encode(long[][] planes, int count) {
    if (count < 1 || count > BLOCK_FRAMES || frames != blocks * BLOCK_FRAMES) {
      throw new IllegalArgumentException(
          "all blocks but the last must have " + BLOCK_FRAMES + " frames, but one had " + count);
    }
    sum.add(planes, count);
    frame.clear();
    int code = codeChannels(planes, count);
    writeHeader(code, count);
    switch (code) {
      case FrameHeader.LEFT_SIDE -> append(0, 3);
      case FrameHeader.SIDE_RIGHT -> append(3, 1);
      case FrameHeader.MID_SIDE -> append(2, 3);
      default -> {
        for (int channel = 0; channel < channels; channel++) {
          coded[channel].appendTo(frame);
        }
      }
    }
    frame.align();
    frame.write(Crc.sixteen(frame.bytes(), 0, frame.size()), 16);
    blocks++;
    frames += count;
    minFrameBytes = Math.min(minFrameBytes, frame.size());
    maxFrameBytes = Math.max(maxFrameBytes, frame.size());
    return Arrays.copyOf(frame.bytes(), frame.size());
  }

  private void append(int first, int second) {
    coded[first].appendTo(frame);
    coded[second].appendTo(frame);
  }

  /** Codes the channels, of two also their mean (2) and difference (3); returns which to take. */
  private int codeChannels(long[][] planes, int count) {
    for (int channel = 0; channel < channels; channel++) {
      code(planes[channel], count, bits, channel);
    }
    if (channels != 2) {
      return channels - 1;
    }
    for (int i = 0; i < count; i++) {
      middle[i] = (planes[0][i] + planes[1][i]) >> 1;
      side[i] = planes[0][i] - planes[1][i];
    }
    code(middle, count, bits, 2);
    code(side, count, bits + 1, 3);
    long left = coded[0].bits();
    long right = coded[1].bits();
    long both = coded[2].bits() + coded[3].bits();
    long least = Math.min(Math.min(left + right, both), coded[3].bits() + Math.min(left, right));
    if (least == left + right) {
      return 1;
    }
    if (least == both) {
      return FrameHeader.MID_SIDE;
    }
    return left <= right ? FrameHeader.LEFT_SIDE : FrameHeader.SIDE_RIGHT;
  }

  private void code(long[] plane, int count, int width, int into) {
    coded[into].clear();
    subframes.encode(plane, count, width, coded[into]);
  }

  /** Section 9.1. */
  private void writeHeader(int channelCode, int count) {
    frame.write(0xfff8, 16);
    frame.write(count == BLOCK_FRAMES ? 12 : 7, 4);
    // A rate that has no code stands at the beginning of the file only.
    frame.write(Math.max(indexOf(CODED_RATES_HZ, sampleRateHz), 0), 4);
    frame.write(channelCode, 4);
    frame.write(Math.max(indexOf(CODED_BITS, bits), 0), 3);
    frame.write(0, 1);
    writeNumber(blocks);
    if (count != BLOCK_FRAMES) {
      frame.write(count - 1, 16);
    }
    frame.write(Crc.eight(frame.bytes(), 0, frame.size()), 8);
  }

  private static int indexOf(int[] values, int value) {
    for (int i = 0; i < values.length; i++) {
      if (values[i] == value) {
        return i;
      }
    }
    return -1;
  }

  /** Section 9.1.5: more than seven bits take a first byte with as many ones as bytes. */
  private void writeNumber(long number) {
    int width = 64 - Long.numberOfLeadingZeros(number);
    if (width <= 7) {
      frame.write(number, 8);
      return;
    }
    int more = (width - 2) / 5;
    int ones = 0xff << (7 - more) & 0xff;
    frame.write(ones | number >>> (6 * more), 8);
    for (int i = more - 1; i >= 0; i--) {
      frame.write(0x80 | (number >>> (6 * i) & 0x3f), 8);
    }
  }

  /**
   * Returns what stands before the first frame. It is of one size always, so that it can be written
   * first, and written over when all blocks are coded. What is coded after that begins a new sum,
   * so call it first and last only.
   *
   * @param channelMask the speakers as in {@code WAVEFORMATEXTENSIBLE}, or 0 if they are those of
   *     section 9.1.3
   * @return the mark, what the samples are, and the speakers as a comment
   */
  public byte[] beginning(int channelMask) {
    return Metadata.toBytes(
        new StreamInfo(
            BLOCK_FRAMES,
            BLOCK_FRAMES,
            blocks == 0 ? 0 : minFrameBytes,
            maxFrameBytes,
            sampleRateHz,
            channels,
            bits,
            frames,
            sum.digits()),
        channelMask);
  }
}
