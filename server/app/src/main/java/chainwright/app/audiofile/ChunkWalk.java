package chainwright.app.audiofile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Walks over the chunks of a RIFF or IFF file: a mark of four letters, a size, the content, and a
 * byte of padding after an odd size. It forgives a missing byte of padding, which some programs
 * leave out.
 */
final class ChunkWalk {

  /** What a chunk's header takes. */
  static final int HEADER_BYTES = 8;

  private final ByteSource source;
  private final ByteOrder order;
  private long next;
  private boolean isAfterOdd;

  private String mark = "";
  private long start;
  private long statedBytes;

  ChunkWalk(ByteSource source, ByteOrder order, long first) {
    this.source = source;
    this.order = order;
    this.next = first;
  }

  /** Goes to the next chunk and stands at its content; false if no further one begins here. */
  boolean advance() throws IOException {
    if (!isChunkAt(next) && !(isAfterOdd && isChunkAt(--next))) {
      return false;
    }
    source.seek(next);
    mark = source.takeMark();
    statedBytes = Integer.toUnsignedLong(source.take(4, order).getInt());
    start = source.position();
    endAt(start + statedBytes);
    return true;
  }

  String mark() {
    return mark;
  }

  /** Where the content begins. */
  long start() {
    return start;
  }

  /** The size that the header states, 0 to 2^32 - 1. */
  long statedBytes() {
    return statedBytes;
  }

  /** How much of the content the file holds. */
  long heldBytes() {
    return Math.min(statedBytes, source.size() - start);
  }

  /** Says where the content really ends. */
  void endAt(long end) {
    isAfterOdd = (end - start & 1) == 1;
    next = end + (isAfterOdd ? 1 : 0);
  }

  /** Takes the beginning of the content, as far as there is any. */
  ByteBuffer head(int most) throws IOException {
    return source.take((int) Math.min(most, heldBytes()), order);
  }

  /** Asks whether the four bytes at a place could be a chunk's mark. */
  boolean isChunkAt(long place) throws IOException {
    if (place > source.size() - HEADER_BYTES) {
      return false;
    }
    source.seek(place);
    ByteBuffer letters = source.take(4, order);
    while (letters.hasRemaining()) {
      byte letter = letters.get();
      if (letter < ' ' || letter > '~') {
        return false;
      }
    }
    return true;
  }
}
