package chainwright.app.audiofile.flac;

import java.io.IOException;

/**
 * The header of a frame.
 *
 * <p>Source: RFC 9639, section 9.1.
 *
 * @param isVariable whether the number counts samples rather than frames
 * @param blockFrames how many samples each channel has, 1 to 65536
 * @param sampleRateHz the sample rate [Hz], 0 if only the stream's beginning says it
 * @param channelCode how many channels less 1, or 8 to 10 for the ways to code two as one and a
 *     difference
 * @param bits how many bits a sample has, 0 if only the stream's beginning says it
 * @param number the number of the frame, or of its first sample
 */
record FrameHeader(
    boolean isVariable, int blockFrames, int sampleRateHz, int channelCode, int bits, long number) {

  static final int LEFT_SIDE = 8;
  static final int SIDE_RIGHT = 9;
  static final int MID_SIDE = 10;

  private static final int SYNC = 0b111111111111100;
  private static final int[] RATES_HZ = {
    0, 88200, 176400, 192000, 8000, 16000, 22050, 24000, 32000, 44100, 48000, 96000
  };
  private static final int[] BITS = {0, 8, 12, -1, 16, 20, 24, 32};

  int channels() {
    return channelCode < 8 ? channelCode + 1 : 2;
  }

  /** Reads the header at the mark. */
  static FrameHeader read(BitReader in) throws IOException {
    if (in.read(15) != SYNC) {
      throw new FlacException("no frame begins where the one before ends");
    }
    final boolean isVariable = in.read(1) == 1;
    final int blockCode = (int) in.read(4);
    final int rateCode = (int) in.read(4);
    final int channelCode = (int) in.read(4);
    final int bits = BITS[(int) in.read(3)];
    if (in.read(1) != 0 || blockCode == 0 || rateCode == 15 || channelCode > 10 || bits < 0) {
      throw new FlacException("a frame's header has a value that is reserved");
    }
    final long number = readNumber(in);
    final int blockFrames = blockFrames(in, blockCode);
    final int rateHz = rateHz(in, rateCode);
    int sum = in.sumOf8();
    if (in.read(8) != sum) {
      throw new FlacException("the check sum of a frame's header is wrong");
    }
    return new FrameHeader(isVariable, blockFrames, rateHz, channelCode, bits, number);
  }

  private static int blockFrames(BitReader in, int code) throws IOException {
    if (code == 1) {
      return 192;
    }
    if (code < 6) {
      return 144 << code;
    }
    if (code < 8) {
      return (int) in.read(code == 6 ? 8 : 16) + 1;
    }
    return 1 << code;
  }

  private static int rateHz(BitReader in, int code) throws IOException {
    return switch (code) {
      case 12 -> (int) in.read(8) * 1000;
      case 13 -> (int) in.read(16);
      case 14 -> (int) in.read(16) * 10;
      default -> RATES_HZ[code];
    };
  }

  /** A number of up to 36 bits in one to seven bytes, coded as UTF-8 codes characters. */
  private static long readNumber(BitReader in) throws IOException {
    int first = (int) in.read(8);
    int ones = Integer.numberOfLeadingZeros(~(first << 24));
    if (ones == 1 || ones == 8) {
      throw new FlacException("a frame's number is coded wrongly");
    }
    long number = first & 0x7f >> ones;
    for (int i = 1; i < ones; i++) {
      int more = (int) in.read(8);
      if (more >> 6 != 0b10) {
        throw new FlacException("a frame's number is coded wrongly");
      }
      number = number << 6 | (more & 0x3f);
    }
    return number;
  }
}
