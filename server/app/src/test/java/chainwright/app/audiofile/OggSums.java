package chainwright.app.audiofile;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Makes the check sums of pages right after something in them was changed. */
final class OggSums {

  private OggSums() {}

  /** Returns the bytes with right sums; what looks like no page is left alone. */
  static byte[] mend(byte[] bytes) {
    byte[] mended = bytes.clone();
    for (int start = 0; start + 27 <= mended.length; ) {
      int segments = mended[start + 26] & 0xff;
      int size = 27 + segments;
      for (int i = 0; i < segments && start + 27 + i < mended.length; i++) {
        size += mended[start + 27 + i] & 0xff;
      }
      if (mended[start] != 'O' || start + size > mended.length) {
        start++;
        continue;
      }
      ByteBuffer page = ByteBuffer.wrap(mended, start, size).slice().order(ByteOrder.LITTLE_ENDIAN);
      page.putInt(22, 0);
      page.putInt(22, sum(page));
      start += size;
    }
    return mended;
  }

  /** Bit by bit, by the polynomial of RFC 3533, section 6. */
  private static int sum(ByteBuffer page) {
    int sum = 0;
    for (int i = 0; i < page.limit(); i++) {
      sum ^= page.get(i) << 24;
      for (int bit = 0; bit < 8; bit++) {
        sum = sum << 1 ^ (sum < 0 ? 0x04c11db7 : 0);
      }
    }
    return sum;
  }
}
