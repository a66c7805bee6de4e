package chainwright.app.audiofile.flac;

/**
 * The check sums of frames, both begun with 0.
 *
 * <p>Source: RFC 9639, section 9.1.8 (8 bits, x^8 + x^2 + x + 1) and section 9.3 (16 bits, x^16 +
 * x^15 + x^2 + 1).
 */
final class Crc {

  private static final int[] EIGHT = table(0x07, 8);
  private static final int[] SIXTEEN = table(0x8005, 16);

  private Crc() {}

  private static int[] table(int polynomial, int width) {
    int[] table = new int[256];
    for (int i = 0; i < 256; i++) {
      int rest = i << (width - 8);
      for (int bit = 0; bit < 8; bit++) {
        rest = rest << 1 ^ ((rest >> (width - 1) & 1) == 1 ? polynomial : 0);
      }
      table[i] = rest & ((1 << width) - 1);
    }
    return table;
  }

  /** The sum of 8 bits over some bytes. */
  static int eight(byte[] bytes, int from, int to) {
    int crc = 0;
    for (int i = from; i < to; i++) {
      crc = EIGHT[crc ^ (bytes[i] & 0xff)];
    }
    return crc;
  }

  /** The sum of 16 bits over some bytes. */
  static int sixteen(byte[] bytes, int from, int to) {
    int crc = 0;
    for (int i = from; i < to; i++) {
      crc = (crc << 8 & 0xff00) ^ SIXTEEN[crc >> 8 ^ (bytes[i] & 0xff)];
    }
    return crc;
  }
}
