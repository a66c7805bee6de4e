package chainwright.dsp.nonlinear;

/**
 * A tape-like saturation: symmetric rounding whose third harmonic grows with the square of level,
 * highs that saturate before the rest, and a small rise at the bottom.
 *
 * <p>Before the shaper, a hyperbolic tangent, lies a first-order high shelf from the treble
 * saturation frequency up to two octaves above it; behind it lies its inverse, and the head-bump, a
 * bell at 60 Hz with a quality factor of 1.
 *
 * <p>Source: common practice, no source; the model is ours.
 *
 * @param driveDb how far the programme is raised into the curve [dB above alignment], finite
 * @param thdAtAlignmentShare THD of a 1 kHz sine at −18 dBFS without drive, in (0, 0.5)
 * @param trebleSaturationHz where highs begin to saturate sooner [Hz], finite, above 0
 * @param headBumpDb the rise at 60 Hz [dB], finite
 */
public record TapeSaturation(
    double driveDb, double thdAtAlignmentShare, double trebleSaturationHz, double headBumpDb)
    implements SaturationSettings {

  /** The centre of the head-bump [Hz]: 60. */
  public static final double HEAD_BUMP_HZ = 60;

  private static final double HEAD_BUMP_QUALITY = 1;
  private static final double SHELF_WIDTH = 4;

  /**
   * Checks the settings.
   *
   * @param driveDb how far the programme is raised into the curve [dB above alignment]
   * @param thdAtAlignmentShare THD of a 1 kHz sine at −18 dBFS without drive
   * @param trebleSaturationHz where highs begin to saturate sooner [Hz]
   * @param headBumpDb the rise at 60 Hz [dB]
   * @throws IllegalArgumentException if a setting is outside its range
   */
  public TapeSaturation {
    SaturationModel.requireSettings(driveDb, thdAtAlignmentShare);
    if (!(trebleSaturationHz > 0) || Double.isInfinite(trebleSaturationHz)) {
      throw new IllegalArgumentException(
          "the treble saturation must be finite and above 0 Hz, but was " + trebleSaturationHz);
    }
    if (!Double.isFinite(headBumpDb)) {
      throw new IllegalArgumentException("the head-bump must be finite, but was " + headBumpDb);
    }
  }

  @Override
  public SaturationModel design() {
    return SaturationModel.of(
        this,
        EmphasisSection.highShelf(trebleSaturationHz, SHELF_WIDTH * trebleSaturationHz),
        new TanhShaper(),
        EmphasisSection.bell(HEAD_BUMP_HZ, headBumpDb, HEAD_BUMP_QUALITY));
  }
}
