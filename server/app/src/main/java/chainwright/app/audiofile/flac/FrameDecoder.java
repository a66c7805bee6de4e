package chainwright.app.audiofile.flac;

import java.io.IOException;

/** Decodes frames, and believes none whose check sums are wrong. */
final class FrameDecoder {

  private final BitReader in;
  private final StreamInfo info;
  private final SubframeDecoder subframes;
  private long[][] planes;

  FrameDecoder(BitReader in, StreamInfo info) {
    this.in = in;
    this.info = info;
    this.subframes = new SubframeDecoder(in);
    this.planes = new long[info.channels()][0];
  }

  /** The samples of the last frame that was decoded, a plane a channel; more room than samples. */
  long[][] planes() {
    return planes;
  }

  /** Decodes the frame at which the reader stands. */
  FrameHeader decode() throws IOException {
    in.mark();
    FrameHeader header = FrameHeader.read(in);
    requireSame(header);
    int count = header.blockFrames();
    if (planes[0].length < count) {
      planes = new long[info.channels()][count];
    }
    for (int channel = 0; channel < planes.length; channel++) {
      boolean isSide =
          header.channelCode() == FrameHeader.SIDE_RIGHT
              ? channel == 0
              : header.channelCode() >= FrameHeader.LEFT_SIDE && channel == 1;
      subframes.decode(isSide ? info.bits() + 1 : info.bits(), planes[channel], count);
    }
    if (in.align() != 0) {
      throw new FlacException("a frame is not filled up with zeros");
    }
    int sum = in.sumOf16();
    if (in.read(16) != sum) {
      throw new FlacException("the check sum of a frame is wrong");
    }
    if (header.channelCode() >= FrameHeader.LEFT_SIDE) {
      joinStereo(header.channelCode(), count);
    }
    requireRange(count);
    return header;
  }

  private void requireSame(FrameHeader header) throws FlacException {
    if (header.channels() != info.channels()
        || (header.bits() != 0 && header.bits() != info.bits())
        || (header.sampleRateHz() != 0 && header.sampleRateHz() != info.sampleRateHz())) {
      throw new FlacException("a frame has another sample rate, depth or number of channels");
    }
  }

  /** Section 4.2. */
  private void joinStereo(int code, int count) {
    long[] first = planes[0];
    long[] second = planes[1];
    for (int i = 0; i < count; i++) {
      long a = first[i];
      long b = second[i];
      switch (code) {
        case FrameHeader.LEFT_SIDE -> second[i] = a - b;
        case FrameHeader.SIDE_RIGHT -> first[i] = a + b;
        default -> {
          // The lowest bit of the sum was dropped; it is that of the difference.
          long sum = a << 1 | (b & 1);
          first[i] = (sum + b) >> 1;
          second[i] = (sum - b) >> 1;
        }
      }
    }
  }

  private void requireRange(int count) throws FlacException {
    int unused = 64 - info.bits();
    long outside = 0;
    for (long[] plane : planes) {
      for (int i = 0; i < count; i++) {
        outside |= plane[i] ^ plane[i] << unused >> unused;
      }
    }
    if (outside != 0) {
      throw new FlacException("a sample is larger than its bits allow");
    }
  }
}
