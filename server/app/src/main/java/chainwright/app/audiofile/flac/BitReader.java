package chainwright.app.audiofile.flac;

import chainwright.app.audiofile.bytes.SeekableBytes;
import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * Reads numbers of any width, highest bit first. It keeps all bytes since the {@linkplain #mark
 * mark}, which is where a frame begins, so that they can be summed up at its end.
 *
 * <p>Bits wait in a long, the next one highest. Below those that are counted there may be bits of
 * the following byte already; they are put in again, the same, when their byte is counted.
 */
final class BitReader {

  /** No frame is as large as this: 8 channels of 65535 samples of 33 bits have 2.2 MB. */
  private static final int MOST_BYTES = 1 << 23;

  private static final VarHandle LONG =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);

  private final SeekableBytes source;
  private byte[] data = new byte[1 << 16];
  private int limit;
  private int next;
  private long cache;
  private int cached;

  /** The place in the file of the first byte in the array. */
  private long base;

  private int mark;

  BitReader(SeekableBytes source) {
    this.source = source;
  }

  /** Goes to a byte and sets the mark there. */
  void seek(long position) throws IOException {
    if (position >= base && position <= base + limit) {
      next = (int) (position - base);
    } else {
      source.seek(position);
      base = position;
      limit = 0;
      next = 0;
    }
    cache = 0;
    cached = 0;
    mark = next;
  }

  /** The place of the next byte, where one begins. */
  long position() {
    return base + next - cached / 8;
  }

  /** Sets the mark at the next byte, where one begins. */
  void mark() {
    mark = next - cached / 8;
  }

  /** The sum of 8 bits over the bytes since the mark. */
  int sumOf8() {
    return Crc.eight(data, mark, next - cached / 8);
  }

  /** The sum of 16 bits over the bytes since the mark. */
  int sumOf16() {
    return Crc.sixteen(data, mark, next - cached / 8);
  }

  /** How many bytes have been taken since the mark, or a few more. */
  int bytesSinceMark() {
    return next - mark;
  }

  /** Goes to the next place after this byte where a frame could begin; false if there is none. */
  boolean findSync() throws IOException {
    int taken = next - cached / 8;
    cache = 0;
    cached = 0;
    next = Math.min(taken + 1, limit);
    while (true) {
      mark = next;
      if (limit - next < 2 && !fill()) {
        return false;
      }
      if (limit - next >= 2) {
        if (data[next] == -1 && (data[next + 1] & 0xfe) == 0xf8) {
          return true;
        }
        next++;
      }
    }
  }

  /** Passes over the bits up to the next byte, and returns them. */
  long align() throws IOException {
    return read(cached % 8);
  }

  /** Takes bits as a number of 0 or above. */
  long read(int width) throws IOException {
    if (width > 32) {
      return read(width - 32) << 32 | read(32);
    }
    if (width == 0) {
      return 0;
    }
    if (cached < width) {
      refill(width);
    }
    long value = cache >>> (64 - width);
    cache <<= width;
    cached -= width;
    return value;
  }

  /** Takes bits as a number in two's complement. */
  long readSigned(int width) throws IOException {
    if (width == 0) {
      return 0;
    }
    int unused = 64 - width;
    return read(width) << unused >> unused;
  }

  /** Counts the zeros before the next one, and takes them all. */
  long readUnary() throws IOException {
    long zeros = 0;
    while (true) {
      if (cached == 0) {
        refill(1);
      }
      int run = Long.numberOfLeadingZeros(cache);
      if (run < cached) {
        cache = cache << run << 1;
        cached -= run + 1;
        return zeros + run;
      }
      zeros += cached;
      cache = cached == 64 ? 0 : cache << cached;
      cached = 0;
    }
  }

  /**
   * Takes residuals of a Rice code.
   *
   * <p>Source: RFC 9639, section 9.2.7.2.
   */
  void readRice(long[] into, int from, int to, int width) throws IOException {
    for (int i = from; i < to; i++) {
      if (cached <= 56 && limit - next >= 8) {
        load();
      }
      int run = Long.numberOfLeadingZeros(cache);
      long folded;
      if (run + 1 + width <= cached) {
        long rest = cache << run << 1;
        folded = (long) run << width | (width == 0 ? 0 : rest >>> (64 - width));
        cache = rest << width;
        cached -= run + 1 + width;
      } else {
        folded = readSlowly(width);
      }
      into[i] = folded >>> 1 ^ -(folded & 1);
    }
  }

  private long readSlowly(int width) throws IOException {
    long high = readUnary();
    if (high >> (32 - width) != 0) {
      throw new FlacException("a residual is larger than 32 bits");
    }
    return high << width | read(width);
  }

  private void refill(int width) throws IOException {
    if (cached <= 56 && limit - next >= 8) {
      load();
    }
    while (cached < width) {
      if (next == limit && !fill()) {
        throw new FlacException("the file ends amid a frame");
      }
      cache |= (data[next++] & 0xffL) << (56 - cached);
      cached += 8;
    }
  }

  private void load() {
    cache |= (long) LONG.get(data, next) >>> cached;
    int bytes = (64 - cached) / 8;
    next += bytes;
    cached += 8 * bytes;
  }

  private boolean fill() throws IOException {
    if (mark > 0) {
      System.arraycopy(data, mark, data, 0, limit - mark);
      base += mark;
      next -= mark;
      limit -= mark;
      mark = 0;
    }
    if (limit == data.length) {
      if (data.length >= MOST_BYTES) {
        throw new FlacException("a frame has no end");
      }
      data = Arrays.copyOf(data, 2 * data.length);
    }
    int got = source.read(data, limit, data.length - limit);
    limit += Math.max(got, 0);
    return got > 0;
  }
}
