package chainwright.dsp.nonlinear;

/**
 * A transformer-like saturation: distortion that rises towards low frequencies, as flux grows with
 * voltage over frequency, and almost none in the middle and top.
 *
 * <p>Before the shaper, a hyperbolic tangent, lies a first-order low shelf that stops rising at 5
 * Hz; behind it lies its inverse, which also brings out the harmonics of low notes. The shelf is
 * solved so that at small levels third-harmonic distortion at the low-frequency cutoff is three
 * times that at 1 kHz.
 *
 * <p>Source: common practice, no source; the model is ours.
 *
 * @param driveDb how far the programme is raised into the curve [dB above alignment], finite
 * @param thdAtAlignmentShare THD of a 1 kHz sine at −18 dBFS without drive, in (0, 0.5)
 * @param lowCutoffHz where distortion is three times that at 1 kHz [Hz], in [10, 400]
 * @param asymmetry 0 for odd harmonics only; above that even ones as well, as of a {@link
 *     ValveSaturation}, in [0, 1]
 */
public record TransformerSaturation(
    double driveDb, double thdAtAlignmentShare, double lowCutoffHz, double asymmetry)
    implements SaturationSettings {

  private static final double SHELF_END_HZ = 5;
  private static final double DISTORTION_RATIO = 3;

  /**
   * Checks the settings.
   *
   * @param driveDb how far the programme is raised into the curve [dB above alignment]
   * @param thdAtAlignmentShare THD of a 1 kHz sine at −18 dBFS without drive
   * @param lowCutoffHz where distortion is three times that at 1 kHz [Hz]
   * @param asymmetry how far the curve is off its middle
   * @throws IllegalArgumentException if a setting is outside its range
   */
  public TransformerSaturation {
    SaturationModel.requireSettings(driveDb, thdAtAlignmentShare);
    if (!(lowCutoffHz >= 10 && lowCutoffHz <= 400)) {
      throw new IllegalArgumentException(
          "the low-frequency cutoff must lie between 10 Hz and 400 Hz, but was " + lowCutoffHz);
    }
    ValveSaturation.requireShare("the asymmetry", asymmetry);
  }

  @Override
  public SaturationModel design() {
    return SaturationModel.of(
        this, emphasis(), ValveSaturation.curve(asymmetry), ValveSaturation.coupling(asymmetry));
  }

  private EmphasisSection emphasis() {
    double low = SHELF_END_HZ;
    double high = 100 * lowCutoffHz;
    while (high > low * (1 + 1e-12)) {
      double middle = Math.sqrt(low * high);
      EmphasisSection shelf = EmphasisSection.lowShelf(middle, SHELF_END_HZ);
      double ratio =
          thirdHarmonic(shelf, lowCutoffHz)
              / thirdHarmonic(shelf, SaturationModel.ALIGNMENT_FREQUENCY_HZ);
      if (ratio < DISTORTION_RATIO) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return EmphasisSection.lowShelf(high, SHELF_END_HZ);
  }

  /**
   * Returns a number in proportion to the third harmonic over the fundamental at small levels: the
   * cube of what reaches the shaper, against what is undone of it at three times the frequency.
   */
  private static double thirdHarmonic(EmphasisSection emphasis, double frequencyHz) {
    double before = emphasis.at(frequencyHz).magnitude();
    return before * before * before / emphasis.at(3 * frequencyHz).magnitude();
  }
}
