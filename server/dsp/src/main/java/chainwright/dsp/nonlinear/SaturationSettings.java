package chainwright.dsp.nonlinear;

/**
 * The settings of a saturation, in the words of the trade.
 *
 * <p>All saturations share two: {@link #thdAtAlignmentShare} fixes how bent the curve is, as the
 * distortion of a 1 kHz sine at −18 dBFS without drive; {@link #driveDb} then raises the programme
 * into that curve and takes the gain off again behind it.
 */
public sealed interface SaturationSettings
    permits TapeSaturation, TransformerSaturation, ValveSaturation {

  /**
   * Returns how far the programme is raised into the curve.
   *
   * @return the drive [dB above the alignment level], finite
   */
  double driveDb();

  /**
   * Returns the distortion of a 1 kHz sine at −18 dBFS without drive.
   *
   * @return THD relative to the fundamental, in (0, 0.5)
   */
  double thdAtAlignmentShare();

  /**
   * Solves for the model that behaves so.
   *
   * @return the model
   * @throws IllegalArgumentException if no curve gives so much distortion
   */
  SaturationModel design();
}
