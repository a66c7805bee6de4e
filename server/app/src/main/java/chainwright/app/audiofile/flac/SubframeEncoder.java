package chainwright.app.audiofile.flac;

/**
 * Codes the samples of one channel of one block in the shortest way it knows: as a constant, by a
 * fixed or a linear predictor, or as they are.
 *
 * <p>Source: RFC 9639, section 9.2.
 */
final class SubframeEncoder {

  private final LinearPredictor linear = new LinearPredictor();
  private final RiceCode fixedRice = new RiceCode();
  private final RiceCode linearRice = new RiceCode();
  private long[] shifted = new long[0];
  private long[] fixedResidual = new long[0];
  private long[] linearResidual = new long[0];

  /** Codes samples of so many bits, up to 33, after what is written already. */
  void encode(long[] samples, int count, int bits, BitWriter out) {
    if (shifted.length < count) {
      shifted = new long[count];
      fixedResidual = new long[count];
      linearResidual = new long[count];
    }
    int wasted = shiftOut(samples, count);
    int width = bits - wasted;
    if (isConstant(count)) {
      writeHead(out, 0, wasted);
      out.write(shifted[0], width);
      return;
    }
    int order = FixedPredictor.choose(shifted, count);
    long plainBits = (long) width * count;
    long fixedBits = Long.MAX_VALUE;
    if (FixedPredictor.residual(order, shifted, count, fixedResidual)) {
      fixedBits = (long) order * width + fixedRice.choose(fixedResidual, order, count);
    }
    linear.analyze(shifted, count);
    int m = linear.order();
    long linearBits = Long.MAX_VALUE;
    if (m > 0 && linear.residual(shifted, count, linearResidual)) {
      linearBits =
          9
              + (long) m * (width + LinearPredictor.PRECISION)
              + linearRice.choose(linearResidual, m, count);
    }
    if (linearBits < fixedBits && linearBits < plainBits) {
      writeHead(out, 31 + m, wasted);
      writeSamples(out, m, width);
      writePredictor(out);
      linearRice.write(out, linearResidual, m, count);
    } else if (fixedBits < plainBits) {
      writeHead(out, 8 + order, wasted);
      writeSamples(out, order, width);
      fixedRice.write(out, fixedResidual, order, count);
    } else {
      writeHead(out, 1, wasted);
      writeSamples(out, count, width);
    }
  }

  /** Takes away the zeros at the lower end that all samples have. */
  private int shiftOut(long[] samples, int count) {
    long used = 0;
    for (int i = 0; i < count; i++) {
      used |= samples[i];
    }
    int wasted = used == 0 ? 0 : Long.numberOfTrailingZeros(used);
    for (int i = 0; i < count; i++) {
      shifted[i] = samples[i] >> wasted;
    }
    return wasted;
  }

  private boolean isConstant(int count) {
    for (int i = 1; i < count; i++) {
      if (shifted[i] != shifted[0]) {
        return false;
      }
    }
    return true;
  }

  private static void writeHead(BitWriter out, int type, int wasted) {
    out.write(type, 7);
    if (wasted == 0) {
      out.write(0, 1);
    } else {
      out.write(1, 1);
      out.writeUnary(wasted - 1);
    }
  }

  private void writeSamples(BitWriter out, int count, int width) {
    for (int i = 0; i < count; i++) {
      out.write(shifted[i], width);
    }
  }

  private void writePredictor(BitWriter out) {
    out.write(LinearPredictor.PRECISION - 1, 4);
    out.write(linear.shift(), 5);
    for (int i = 0; i < linear.order(); i++) {
      out.write(linear.coefficients()[i], LinearPredictor.PRECISION);
    }
  }
}
