package chainwright.app.audiofile.flac;

import java.util.Arrays;

/** Writes numbers of any width, highest bit first, into an array that grows. */
final class BitWriter {

  private byte[] bytes = new byte[1 << 14];
  private int size;
  private long cache;
  private int cached;

  void clear() {
    size = 0;
    cache = 0;
    cached = 0;
  }

  byte[] bytes() {
    return bytes;
  }

  /** How many whole bytes have been written. */
  int size() {
    return size;
  }

  /** How many bits have been written. */
  long bits() {
    return 8L * size + cached;
  }

  /** Writes all of this at the end of another. */
  void appendTo(BitWriter out) {
    for (int i = 0; i < size; i++) {
      out.write(bytes[i], 8);
    }
    out.write(cache, cached);
  }

  /** Writes the lowest bits of a number, up to 57 of them. */
  void write(long value, int width) {
    if (width > 32) {
      write(value >>> 32, width - 32);
      write(value, 32);
    } else if (width > 0) {
      cache = cache << width | (value & ((1L << width) - 1));
      cached += width;
      drain();
    }
  }

  /** Writes so many zeros and a one. */
  void writeUnary(long zeros) {
    long left = zeros;
    for (; left >= 32; left -= 32) {
      write(0, 32);
    }
    write(1, (int) left + 1);
  }

  /** Writes a residual of a Rice code. */
  void writeRice(long folded, int width) {
    writeUnary(folded >>> width);
    write(folded, width);
  }

  /** Fills the last byte up with zeros. */
  void align() {
    write(0, (8 - cached % 8) % 8);
  }

  private void drain() {
    if (bytes.length - size < 8) {
      bytes = Arrays.copyOf(bytes, 2 * bytes.length);
    }
    for (; cached >= 8; cached -= 8) {
      bytes[size++] = (byte) (cache >>> (cached - 8));
    }
  }
}
