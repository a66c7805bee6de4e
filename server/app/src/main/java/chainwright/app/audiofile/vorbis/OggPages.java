package chainwright.app.audiofile.vorbis;

import chainwright.app.audiofile.bytes.SeekableBytes;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;

/**
 * Walks over the pages of an Ogg file. A page whose check sum is wrong is none.
 *
 * <p>Source: RFC 3533, section 6; from memory.
 */
final class OggPages {

  static final int MOST_BYTES = 27 + 255 + 255 * 255;

  private static final int HEADER_BYTES = 27;
  private static final int MARK = 0x4f676753;
  private static final int[] SUMS = sums();
  private static final long PATIENCE_BYTES = 1L << 24;

  private final SeekableBytes source;
  private final byte[] page = new byte[MOST_BYTES];
  private final ByteBuffer numbers = ByteBuffer.wrap(page).order(ByteOrder.LITTLE_ENDIAN);
  private long patience;
  private long start;
  private long next;
  private int size;

  OggPages(SeekableBytes source) {
    this.source = source;
    this.patience = PATIENCE_BYTES + 4 * source.size();
  }

  private static int[] sums() {
    int[] sums = new int[256];
    for (int i = 0; i < 256; i++) {
      int rest = i << 24;
      for (int bit = 0; bit < 8; bit++) {
        rest = rest << 1 ^ (rest < 0 ? 0x04c11db7 : 0);
      }
      sums[i] = rest;
    }
    return sums;
  }

  void seek(long place) {
    next = place;
  }

  /** Where this page begins. */
  long start() {
    return start;
  }

  /** Where the next page should begin. */
  long next() {
    return next;
  }

  boolean isContinued() {
    return (page[5] & 1) != 0;
  }

  boolean isFirst() {
    return (page[5] & 2) != 0;
  }

  boolean isLast() {
    return (page[5] & 4) != 0;
  }

  /** The number of the sample after the last packet that ends here; -1 if none does. */
  long granule() {
    return numbers.getLong(6);
  }

  int serial() {
    return numbers.getInt(14);
  }

  int sequence() {
    return numbers.getInt(18);
  }

  /** Goes to the next page; false if there is no whole one. */
  boolean advance() throws IOException {
    long place = next;
    while (patience > 0 && place >= 0) {
      if (isPageAt(place)) {
        start = place;
        next = place + size;
        return true;
      }
      patience -= Math.max(size, 1);
      place = findMark(place + 1);
    }
    return false;
  }

  private boolean isPageAt(long place) throws IOException {
    source.seek(Math.min(place, source.size()));
    size = source.read(page, 0, HEADER_BYTES);
    if (size < HEADER_BYTES || ByteBuffer.wrap(page).getInt(0) != MARK || page[4] != 0) {
      return false;
    }
    int segments = page[26] & 0xff;
    int bytes = segments;
    size += source.read(page, HEADER_BYTES, segments);
    for (int i = 0; i < segments; i++) {
      bytes += page[HEADER_BYTES + i] & 0xff;
    }
    size += source.read(page, HEADER_BYTES + segments, bytes - segments);
    return size == HEADER_BYTES + bytes && sum() == numbers.getInt(22);
  }

  private int sum() {
    int sum = 0;
    for (int i = 0; i < size; i++) {
      // The sum itself counts as zeros.
      int value = i >= 22 && i < 26 ? 0 : page[i] & 0xff;
      sum = sum << 8 ^ SUMS[sum >>> 24 ^ value];
    }
    return sum;
  }

  private long findMark(long from) throws IOException {
    long place = from;
    while (place <= source.size() - HEADER_BYTES) {
      source.seek(place);
      int held = source.read(page, 0, MOST_BYTES);
      for (int i = 0; i <= held - 4; i++) {
        if (page[i] == 'O' && ByteBuffer.wrap(page).getInt(i) == MARK) {
          return place + i;
        }
      }
      if (held < 4) {
        return -1;
      }
      place += held - 3;
    }
    return -1;
  }

  /** The packets' pieces that stand on this page; a last one of full segments goes on. */
  List<Piece> pieces() {
    List<Piece> pieces = new ArrayList<>();
    int segments = page[26] & 0xff;
    int at = HEADER_BYTES + segments;
    int length = 0;
    for (int i = 0; i < segments; i++) {
      int part = page[HEADER_BYTES + i] & 0xff;
      length += part;
      if (part < 255) {
        pieces.add(new Piece(at, length, true));
        at += length;
        length = 0;
      }
    }
    if (length > 0) {
      pieces.add(new Piece(at, length, false));
    }
    return pieces;
  }

  /** The bytes of the page. */
  byte[] bytes() {
    return page;
  }

  /**
   * A piece of a packet.
   *
   * @param at its first byte in the page
   * @param length how many bytes
   * @param isEnd whether the packet ends with it
   */
  record Piece(int at, int length, boolean isEnd) {}
}
