package chainwright.dsp.nonlinear;

/** A linear filter on paper: its gain and phase at each frequency. */
@FunctionalInterface
interface Response {

  Phasor at(double frequencyHz);

  /** Returns the filter that changes nothing. */
  static Response flat() {
    return frequencyHz -> Phasor.ONE;
  }

  /**
   * Returns the first-order shelf (1 + jf/zero) / (1 + jf/pole).
   *
   * @param zeroHz where it begins to rise [Hz]
   * @param poleHz where it ends [Hz]
   */
  static Response shelf(double zeroHz, double poleHz) {
    return frequencyHz ->
        new Phasor(1, frequencyHz / zeroHz).dividedBy(new Phasor(1, frequencyHz / poleHz));
  }

  /**
   * Returns the first-order low shelf (jf + zero) / (jf + pole), 1 at high frequencies.
   *
   * @param zeroHz where it has risen by 3 dB towards low frequencies [Hz]
   * @param poleHz where it stops rising [Hz]
   */
  static Response lowShelf(double zeroHz, double poleHz) {
    return frequencyHz ->
        new Phasor(zeroHz, frequencyHz).dividedBy(new Phasor(poleHz, frequencyHz));
  }

  /**
   * Returns an analogue bell.
   *
   * <p>Source: R. Bristow-Johnson, "Audio EQ Cookbook" (W3C Group Note), peaking EQ prototype.
   */
  static Response bell(double centreHz, double gainDb, double qualityFactor) {
    double a = Math.pow(10, gainDb / 40);
    return frequencyHz -> {
      double f = frequencyHz / centreHz;
      double real = 1 - f * f;
      return new Phasor(real, f * a / qualityFactor)
          .dividedBy(new Phasor(real, f / (a * qualityFactor)));
    };
  }
}
