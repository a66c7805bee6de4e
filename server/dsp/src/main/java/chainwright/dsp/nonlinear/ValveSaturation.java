package chainwright.dsp.nonlinear;

/**
 * A valve-like saturation: asymmetric rounding, the second harmonic first, then higher ones.
 *
 * <p>The curve is a hyperbolic tangent moved off its middle. At an asymmetry of 1 it is moved so
 * far that a small signal has no third harmonic at all. The offset that it gives is removed by a
 * first-order high-pass at 2 Hz, as by a coupling capacitor. The bias moves by the mean of what is
 * driven more than 12 dB above alignment, and recovers. The harmonics are those of a settled tone.
 *
 * <p>Source: common practice, no source; the model is ours.
 *
 * @param driveDb how far the programme is raised into the curve [dB above alignment], finite
 * @param thdAtAlignmentShare THD of a 1 kHz sine at −18 dBFS without drive, in (0, 0.5)
 * @param asymmetry how far the curve is off its middle, in [0, 1]; 0 is symmetric
 * @param recoverySeconds the time in which the bias recovers by 63 % after an overload [s]; 0 for a
 *     bias that stays where it is
 */
public record ValveSaturation(
    double driveDb, double thdAtAlignmentShare, double asymmetry, double recoverySeconds)
    implements SaturationSettings {

  /** The cutoff of the high-pass that removes the offset of an asymmetric curve [Hz]: 2. */
  public static final double COUPLING_HZ = 2;

  /**
   * Where the third derivative of tanh is 0: tanh² = 1/3, so this is artanh(1/√3) = ln(2 + √3)/2.
   */
  private static final double BIAS_WITHOUT_THIRD = Math.log(2 + Math.sqrt(3)) / 2;

  /**
   * Checks the settings.
   *
   * @param driveDb how far the programme is raised into the curve [dB above alignment]
   * @param thdAtAlignmentShare THD of a 1 kHz sine at −18 dBFS without drive
   * @param asymmetry how far the curve is off its middle
   * @param recoverySeconds the time in which the bias recovers by 63 % [s]
   * @throws IllegalArgumentException if a setting is outside its range
   */
  public ValveSaturation {
    SaturationModel.requireSettings(driveDb, thdAtAlignmentShare);
    requireShare("the asymmetry", asymmetry);
    if (!(recoverySeconds >= 0) || Double.isInfinite(recoverySeconds)) {
      throw new IllegalArgumentException(
          "the recovery must be finite and 0 s or more, but was " + recoverySeconds + " s");
    }
  }

  /**
   * Makes a saturation whose bias stays where it is.
   *
   * @param driveDb how far the programme is raised into the curve [dB above alignment]
   * @param thdAtAlignmentShare THD of a 1 kHz sine at −18 dBFS without drive
   * @param asymmetry how far the curve is off its middle
   * @throws IllegalArgumentException if a setting is outside its range
   */
  public ValveSaturation(double driveDb, double thdAtAlignmentShare, double asymmetry) {
    this(driveDb, thdAtAlignmentShare, asymmetry, 0);
  }

  /** Returns the hyperbolic tangent, off its middle by this asymmetry in [0, 1]. */
  static Shaper curve(double asymmetry) {
    Shaper tanh = new TanhShaper();
    return asymmetry == 0 ? tanh : new BiasedShaper(tanh, asymmetry * BIAS_WITHOUT_THIRD);
  }

  /** Returns the high-pass that removes the offset an asymmetric curve gives. */
  static EmphasisSection coupling(double asymmetry) {
    return asymmetry == 0 ? EmphasisSection.flat() : EmphasisSection.highPass(COUPLING_HZ);
  }

  /** Throws unless the value lies from 0 to 1. */
  static void requireShare(String name, double value) {
    if (!(value >= 0 && value <= 1)) {
      throw new IllegalArgumentException(name + " must lie between 0 and 1, but was " + value);
    }
  }

  @Override
  public SaturationModel design() {
    boolean isMoved = recoverySeconds > 0;
    EmphasisSection output = isMoved ? EmphasisSection.highPass(COUPLING_HZ) : coupling(asymmetry);
    SaturationModel fixed =
        SaturationModel.of(this, EmphasisSection.flat(), curve(asymmetry), output);
    return isMoved ? fixed.withBiasShift(recoverySeconds, driveDb) : fixed;
  }
}
