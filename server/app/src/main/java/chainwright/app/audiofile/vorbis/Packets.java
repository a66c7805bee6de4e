package chainwright.app.audiofile.vorbis;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;

/** Puts the packets of one stream together, page by page. */
final class Packets {

  /** Larger than any packet but one with a picture in it, which is not used. */
  private static final int MOST_BYTES = 1 << 22;

  private final ByteArrayOutputStream begun = new ByteArrayOutputStream();

  /** Whether the beginning of the packet in progress is known; a page may have been lost. */
  private boolean isWhole;

  private int nextSequence;

  /** Forgets what has begun. */
  void clear() {
    begun.reset();
    isWhole = false;
  }

  /** Takes a page and returns the packets that end on it. */
  List<byte[]> add(OggPages page) {
    if (!page.isContinued() || page.sequence() != nextSequence) {
      clear();
    }
    isWhole |= !page.isContinued();
    nextSequence = page.sequence() + 1;
    List<byte[]> packets = new ArrayList<>();
    for (OggPages.Piece piece : page.pieces()) {
      if (begun.size() + piece.length() <= MOST_BYTES) {
        begun.write(page.bytes(), piece.at(), piece.length());
      } else {
        isWhole = false;
      }
      if (piece.isEnd()) {
        if (isWhole) {
          packets.add(begun.toByteArray());
        }
        begun.reset();
        isWhole = true;
      }
    }
    return packets;
  }
}
