package chainwright.app.audiofile.vorbis;

/** Reads numbers of any width from a packet, lowest bit first. */
final class LowBits {

  private final byte[] bytes;
  private long at;

  LowBits(byte[] bytes, int firstByte) {
    this.bytes = bytes;
    this.at = 8L * firstByte;
  }

  /** Takes a number of up to 32 bits. */
  long read(int width) throws VorbisException {
    if (at + width > 8L * bytes.length) {
      throw new VorbisException("a header ends too early");
    }
    long value = 0;
    for (int i = 0; i < width; i++, at++) {
      value |= (long) (bytes[(int) (at >> 3)] >> (at & 7) & 1) << i;
    }
    return value;
  }

  /** Passes over bits. */
  void skip(long width) throws VorbisException {
    if (width < 0 || at + width > 8L * bytes.length) {
      throw new VorbisException("a header ends too early");
    }
    at += width;
  }
}
