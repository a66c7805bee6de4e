package chainwright.dsp.signal;

/**
 * A low-pass filter in continuous time: a sinc under a Kaiser window. Times are in samples.
 *
 * @param cutoffRatio the middle of its transition, as a share of the sample rate
 * @param reach how far it goes to each side [samples]
 * @param window the window
 */
record WindowedSinc(double cutoffRatio, int reach, KaiserWindow window) {

  /** Returns the filter's height at a distance from its middle. */
  double at(double distance) {
    double angle = 2 * Math.PI * cutoffRatio * distance;
    double sinc = distance == 0 ? 1 : Math.sin(angle) / angle;
    return 2 * cutoffRatio * sinc * window.at(distance / reach);
  }

  /**
   * Returns the coefficients for a place between two samples; a constant passes as it is.
   *
   * @param fraction how far after the earlier sample the place lies, from 0 to below 1
   * @return the coefficients, of the sample {@code reach − 1} before the earlier one first
   */
  double[] row(double fraction) {
    double[] row = new double[2 * reach];
    double sum = 0;
    for (int tap = 0; tap < row.length; tap++) {
      row[tap] = at(tap - reach + 1 - fraction);
      sum += row[tap];
    }
    for (int tap = 0; tap < row.length; tap++) {
      row[tap] /= sum;
    }
    return row;
  }
}
