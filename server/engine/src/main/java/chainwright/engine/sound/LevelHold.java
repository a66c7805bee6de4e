package chainwright.engine.sound;

import java.util.OptionalDouble;

/**
 * Protects ears and loudspeakers: a render that is much louder than its take is held at the level
 * of the take.
 *
 * <p>Much is more than {@value #MOST_LOUDER_LU} LU. Where there is no loudness to compare, since
 * the sound is shorter than 0.4 s or the take does not rise above −70 LUFS, it is a true peak that
 * is more than {@value #MOST_HIGHER_DB} dB higher. Both figures are ours, no source.
 */
public final class LevelHold {

  /** How much louder than its take a render may be [LU]. */
  public static final double MOST_LOUDER_LU = 6;

  /** How much higher its true peak may be where there is no loudness to compare [dB]. */
  public static final double MOST_HIGHER_DB = 10;

  private LevelHold() {}

  /**
   * Finds the gain that holds a render at the level of its take.
   *
   * @param take the take's level
   * @param render the render's level
   * @param declaredLufs the loudness that the chain is meant for; a render that is no louder than
   *     that is not held
   * @return the gain [dB], below 0; empty if the render may stay as it is, or the take is silent
   */
  public static OptionalDouble gainDb(
      MeasuredLevel take, MeasuredLevel render, OptionalDouble declaredLufs) {
    boolean isMeant =
        declaredLufs.isPresent() && render.integratedLufs() <= declaredLufs.getAsDouble();
    if (isMeant) {
      return OptionalDouble.empty();
    }
    double louderLu = render.integratedLufs() - take.integratedLufs();
    if (Double.isFinite(louderLu)) {
      return louderLu > MOST_LOUDER_LU ? OptionalDouble.of(-louderLu) : OptionalDouble.empty();
    }
    double higherDb = render.truePeakDbtp() - take.truePeakDbtp();
    return Double.isFinite(higherDb) && higherDb > MOST_HIGHER_DB
        ? OptionalDouble.of(-higherDb)
        : OptionalDouble.empty();
  }
}
