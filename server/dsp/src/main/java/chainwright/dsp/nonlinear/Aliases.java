package chainwright.dsp.nonlinear;

import java.util.HashMap;
import java.util.Map;

/**
 * The false tones that a non-linearity makes when it is computed at a finite rate.
 *
 * <p>A harmonic n f above half the rate is found again at |n f − m rate|, where it follows no
 * harmony. Harmonics that fold to one frequency add up with their phases.
 */
public final class Aliases {

  /** Nothing at all, as a level [dB]. */
  private static final double NOTHING_DB = Double.NEGATIVE_INFINITY;

  /** Folded frequencies closer than this are one [Hz]. */
  private static final double SAME_HZ = 0.01;

  private Aliases() {}

  /**
   * Returns how many harmonics it takes to know the strongest false tone: those that fold around
   * the rate once. Higher ones are weaker; those of a hard clipper add up to 1 dB to the strongest.
   *
   * @param toneHz the frequency of the tone [Hz], above 0
   * @param rateHz the rate that the non-linearity is computed at, oversampling included [Hz]
   * @param highestHz the highest frequency that is kept afterwards [Hz], at most half the rate
   * @return the number of harmonics
   */
  public static int count(double toneHz, double rateHz, double highestHz) {
    return (int) Math.ceil((rateHz + highestHz) / toneHz);
  }

  /**
   * Returns the level of the strongest false tone.
   *
   * @param harmonics what the non-linearity makes of the tone
   * @param toneHz the frequency of the tone [Hz], above 0, below half the rate
   * @param rateHz the rate that the non-linearity is computed at, oversampling included [Hz]
   * @param highestHz the highest frequency that is kept afterwards [Hz], at most half the rate
   * @return the level relative to the fundamental [dB]; −∞ where there is none
   */
  public static double strongestDb(
      Harmonics harmonics, double toneHz, double rateHz, double highestHz) {
    Map<Long, Phasor> folded = new HashMap<>();
    for (int n = 2; n <= harmonics.count(); n++) {
      double hertz = n * toneHz;
      double turns = Math.rint(hertz / rateHz);
      double offset = hertz - turns * rateHz;
      if (turns > 0 && Math.abs(offset) <= highestHz) {
        // Below 0 Hz a tone is seen mirrored: sin(−x) is −sin x, cos(−x) is cos x.
        Phasor part =
            new Phasor(
                Math.copySign(1, offset) * harmonics.sineAmplitude(n),
                harmonics.cosineAmplitude(n));
        folded.merge(Math.round(Math.abs(offset) / SAME_HZ), part, Phasor::plus);
      }
    }
    double strongest = folded.values().stream().mapToDouble(Phasor::magnitude).max().orElse(0);
    return strongest == 0 ? NOTHING_DB : 20 * Math.log10(strongest / harmonics.amplitude(1));
  }
}
