package chainwright.app.audiofile;

import java.nio.ByteBuffer;

/**
 * A floating-point number of 80 bits, in which AIFF keeps the sample rate: a sign, 15 bits of
 * exponent and 64 bits of mantissa whose highest is the unit.
 *
 * <p>Source: Apple Computer, "Audio Interchange File Format: AIFF", version 1.3 (1989), type {@code
 * extended}; from memory.
 */
final class ExtendedFloat {

  private static final int BIAS = 16383;

  private ExtendedFloat() {}

  /** Takes ten bytes; infinities and NaN come out as NaN. */
  static double get(ByteBuffer bytes) {
    int head = bytes.getShort();
    long mantissa = bytes.getLong();
    int exponent = head & 0x7fff;
    if (exponent == 0x7fff) {
      return Double.NaN;
    }
    double upper = (double) (mantissa >>> 32) * 0x1p32;
    double value = Math.scalb(upper + (mantissa & 0xffff_ffffL), exponent - BIAS - 63);
    return head < 0 ? -value : value;
  }

  /** Puts ten bytes; the value is finite and above 0. */
  static void put(ByteBuffer bytes, double value) {
    int exponent = Math.getExponent(value);
    bytes.putShort((short) (exponent + BIAS));
    bytes.putLong((long) Math.scalb(value, 62 - exponent) << 1);
  }
}
