package chainwright.app.audiofile.vorbis;

import java.io.IOException;

/**
 * How long a stream is, by the numbers on its pages.
 *
 * @param origin the number of its first sample; not 0 if it was cut out of a longer one
 * @param leadIn how many samples before the first are decoded and dropped [frames]
 * @param frames the length [frames]
 * @param isEnded whether the last page says that it is the last
 */
record StreamLength(long origin, long leadIn, long frames, boolean isEnded) {

  private static final int FIRST_TAIL_BYTES = 1 << 16;

  /** A packet takes a byte at least, and its length another. */
  private static final int LEAST_PACKET_BYTES = 2;

  /**
   * Measures a stream.
   *
   * <p>The first page tells where the stream begins: its number less what was decoded. Below 0, the
   * samples before 0 are to be dropped, unless the page is also the last, whose number cuts off the
   * end, or pages before it are lost. Source: Xiph.Org Foundation, "Vorbis I specification",
   * appendix A.2; from memory.
   */
  static StreamLength measure(OggPages pages, StreamStart stream, PacketDecoder decoder)
      throws IOException {
    Packets packets = new Packets();
    decoder.restart();
    pages.seek(stream.audioStart());
    long first = -1;
    boolean isEnded = false;
    boolean isWhole = false;
    int sequence = stream.lastSequence();
    while (first < 0 && pages.advance()) {
      if (pages.serial() == stream.serial()) {
        for (byte[] packet : packets.add(pages)) {
          decoder.add(packet);
        }
        isWhole = sequence >= 0 && pages.sequence() == sequence + 1;
        sequence = isWhole ? pages.sequence() : -1;
        first = pages.granule();
        isEnded = pages.isLast();
      }
    }
    if (first < 0) {
      return new StreamLength(0, 0, 0, isEnded);
    }
    long begin = first - decoder.count();
    boolean isCut = isWhole && !isEnded;
    long origin = isCut ? Math.max(begin, 0) : 0;
    long leadIn = isCut ? Math.max(-begin, 0) : 0;
    long most =
        stream.sourceBytes() / LEAST_PACKET_BYTES * (stream.identification().longBlockFrames() / 2);
    long frames = Math.min(first - origin, most);
    long afterFirst = pages.next();
    for (long tail = FIRST_TAIL_BYTES; ; tail *= 8) {
      long from = Math.max(afterFirst, stream.sourceBytes() - tail);
      boolean isFound = false;
      pages.seek(from);
      while (pages.advance()) {
        long after = pages.granule() - origin;
        if (pages.serial() == stream.serial() && after >= frames && after <= most) {
          frames = after;
          isEnded = pages.isLast();
          isFound = true;
        }
      }
      if (isFound || from == afterFirst) {
        return new StreamLength(origin, leadIn, frames, isEnded);
      }
    }
  }
}
