package chainwright.app.audiofile;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * How a sample stands in bytes. Integers stand at the upper end of their bytes, as WAV and AIFF
 * both want it, so full scale is that of all their bits, whether they count or not.
 *
 * @param kind integer or floating point, and how many bits count
 * @param bytes how many bytes, 1 to 4, or 8 in floating point
 * @param order which byte comes first
 * @param isOffset whether 0 stands for the lowest value: one byte in a WAV file
 */
record SampleCode(SampleKind kind, int bytes, ByteOrder order, boolean isOffset) {

  private static final VarHandle SHORT_LOW = of(short[].class, ByteOrder.LITTLE_ENDIAN);
  private static final VarHandle SHORT_HIGH = of(short[].class, ByteOrder.BIG_ENDIAN);
  private static final VarHandle INT_LOW = of(int[].class, ByteOrder.LITTLE_ENDIAN);
  private static final VarHandle INT_HIGH = of(int[].class, ByteOrder.BIG_ENDIAN);
  private static final VarHandle LONG_LOW = of(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final VarHandle LONG_HIGH = of(long[].class, ByteOrder.BIG_ENDIAN);

  private static VarHandle of(Class<?> array, ByteOrder order) {
    return MethodHandles.byteArrayViewVarHandle(array, order);
  }

  /** Returns the code of the least bytes that hold the bits. */
  static SampleCode of(SampleKind kind, ByteOrder order, boolean isOffset) {
    return new SampleCode(kind, (kind.bits() + 7) / 8, order, isOffset);
  }

  private boolean isLow() {
    return order.equals(ByteOrder.LITTLE_ENDIAN);
  }

  /**
   * Reads samples that stand some bytes apart.
   *
   * @param from the bytes
   * @param first the first byte of the first sample
   * @param stride how many bytes lie from one sample's first to the next one's
   * @param into the samples, full scale 1.0
   * @param offset the first of them
   * @param count how many
   */
  void decode(byte[] from, int first, int stride, double[] into, int offset, int count) {
    int at = first;
    if (!kind.isInteger()) {
      VarHandle ints = isLow() ? INT_LOW : INT_HIGH;
      VarHandle longs = isLow() ? LONG_LOW : LONG_HIGH;
      for (int i = offset; i < offset + count; i++, at += stride) {
        into[i] =
            bytes == 4
                ? Float.intBitsToFloat((int) ints.get(from, at))
                : Double.longBitsToDouble((long) longs.get(from, at));
      }
    } else {
      double step = 1.0 / (1L << (8 * bytes - 1));
      for (int i = offset; i < offset + count; i++, at += stride) {
        into[i] = step * integerAt(from, at);
      }
    }
  }

  private int integerAt(byte[] from, int at) {
    return switch (bytes) {
      case 1 -> isOffset ? (from[at] & 0xff) - 128 : from[at];
      case 2 -> (short) (isLow() ? SHORT_LOW : SHORT_HIGH).get(from, at);
      case 3 -> {
        int high = from[isLow() ? at + 2 : at] << 16;
        int low = from[isLow() ? at : at + 2] & 0xff;
        yield high | (from[at + 1] & 0xff) << 8 | low;
      }
      default -> (int) (isLow() ? INT_LOW : INT_HIGH).get(from, at);
    };
  }

  /**
   * Writes samples some bytes apart.
   *
   * @param from the samples, full scale 1.0
   * @param offset the first of them
   * @param into the bytes
   * @param first the first byte of the first sample
   * @param stride how many bytes lie from one sample's first to the next one's
   * @param count how many
   * @param rounding makes integers, and counts those that had to be held
   */
  void encode(
      double[] from,
      int offset,
      byte[] into,
      int first,
      int stride,
      int count,
      IntegerRounding rounding) {
    int at = first;
    if (!kind.isInteger()) {
      for (int i = offset; i < offset + count; i++, at += stride) {
        if (bytes == 4) {
          (isLow() ? INT_LOW : INT_HIGH).set(into, at, Float.floatToRawIntBits((float) from[i]));
        } else {
          (isLow() ? LONG_LOW : LONG_HIGH).set(into, at, Double.doubleToRawLongBits(from[i]));
        }
      }
    } else {
      int shift = 8 * bytes - kind.bits();
      for (int i = offset; i < offset + count; i++, at += stride) {
        putInteger(rounding.round(from[i]) << shift, into, at);
      }
    }
  }

  private void putInteger(int value, byte[] into, int at) {
    switch (bytes) {
      case 1 -> into[at] = (byte) (isOffset ? value + 128 : value);
      case 2 -> (isLow() ? SHORT_LOW : SHORT_HIGH).set(into, at, (short) value);
      case 3 -> {
        into[isLow() ? at + 2 : at] = (byte) (value >> 16);
        into[at + 1] = (byte) (value >> 8);
        into[isLow() ? at : at + 2] = (byte) value;
      }
      default -> (isLow() ? INT_LOW : INT_HIGH).set(into, at, value);
    }
  }
}
