package chainwright.app.audiofile.flac;

import java.io.IOException;
import java.util.Arrays;

/**
 * Decodes the samples of one channel of one frame.
 *
 * <p>Source: RFC 9639, section 9.2. All sums have 64 bits, which is enough for 33 bits of sample,
 * 15 of coefficient and 32 of them.
 */
final class SubframeDecoder {

  private static final int MOST_COEFFICIENTS = 32;

  private final BitReader in;
  private final long[] coefficients = new long[MOST_COEFFICIENTS];

  SubframeDecoder(BitReader in) {
    this.in = in;
  }

  /** Decodes as many samples as a block has, of so many bits. */
  void decode(int bits, long[] samples, int count) throws IOException {
    if (in.read(1) != 0) {
      throw new FlacException("a subframe does not begin with a zero");
    }
    final int type = (int) in.read(6);
    long wasted = in.read(1) == 0 ? 0 : in.readUnary() + 1;
    if (wasted >= bits) {
      throw new FlacException("a subframe leaves out more bits than a sample has");
    }
    int width = bits - (int) wasted;
    if (type == 0) {
      Arrays.fill(samples, 0, count, in.readSigned(width));
    } else if (type == 1) {
      readPlain(width, samples, 0, count);
    } else if (type >= 8 && type <= 12) {
      decodeFixed(type - 8, width, samples, count);
    } else if (type >= 32) {
      decodeLinear(type - 31, width, samples, count);
    } else {
      throw new FlacException("a subframe is of a type that is reserved");
    }
    if (wasted > 0) {
      for (int i = 0; i < count; i++) {
        samples[i] <<= wasted;
      }
    }
  }

  private void readPlain(int width, long[] samples, int from, int to) throws IOException {
    for (int i = from; i < to; i++) {
      samples[i] = in.readSigned(width);
    }
  }

  private void decodeFixed(int order, int width, long[] s, int count) throws IOException {
    requireOrder(order, count);
    readPlain(width, s, 0, order);
    readResidual(order, s, count);
    switch (order) {
      case 0 -> {
        // The residuals are the samples.
      }
      case 1 -> {
        for (int i = 1; i < count; i++) {
          s[i] += s[i - 1];
        }
      }
      case 2 -> {
        for (int i = 2; i < count; i++) {
          s[i] += 2 * s[i - 1] - s[i - 2];
        }
      }
      case 3 -> {
        for (int i = 3; i < count; i++) {
          s[i] += 3 * (s[i - 1] - s[i - 2]) + s[i - 3];
        }
      }
      default -> {
        for (int i = 4; i < count; i++) {
          s[i] += 4 * (s[i - 1] + s[i - 3]) - 6 * s[i - 2] - s[i - 4];
        }
      }
    }
  }

  private void decodeLinear(int order, int width, long[] samples, int count) throws IOException {
    requireOrder(order, count);
    readPlain(width, samples, 0, order);
    int precision = (int) in.read(4) + 1;
    int shift = (int) in.readSigned(5);
    if (precision == 16 || shift < 0) {
      throw new FlacException("a predictor has a precision or shift that is not allowed");
    }
    for (int i = 0; i < order; i++) {
      coefficients[i] = in.readSigned(precision);
    }
    readResidual(order, samples, count);
    long[] c = coefficients;
    for (int i = order; i < count; i++) {
      long sum = 0;
      for (int j = 0; j < order; j++) {
        sum += c[j] * samples[i - 1 - j];
      }
      samples[i] += sum >> shift;
    }
  }

  private static void requireOrder(int order, int count) throws FlacException {
    if (order > count) {
      throw new FlacException("a predictor needs more samples than a block has");
    }
  }

  /** Section 9.2.7. */
  private void readResidual(int order, long[] into, int count) throws IOException {
    int method = (int) in.read(2);
    if (method > 1) {
      throw new FlacException("a residual is coded in a way that is reserved");
    }
    int parameterBits = 4 + method;
    int escape = (1 << parameterBits) - 1;
    int partitionOrder = (int) in.read(4);
    int size = count >> partitionOrder;
    if (size << partitionOrder != count || size < order) {
      throw new FlacException("a residual is divided into parts that do not fit the block");
    }
    for (int from = order, to = size; to <= count && from <= to; from = to, to += size) {
      int parameter = (int) in.read(parameterBits);
      if (parameter == escape) {
        readPlain((int) in.read(5), into, from, to);
      } else {
        in.readRice(into, from, to, parameter);
      }
      if (size == 0) {
        break;
      }
    }
  }
}
