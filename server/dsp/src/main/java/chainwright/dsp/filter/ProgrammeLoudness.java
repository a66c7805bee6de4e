package chainwright.dsp.filter;

import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import java.util.List;

/**
 * How much louder a response makes a usual programme, before any recording is known.
 *
 * <p>The programme is the noise of IEC 60268-1:1985, clause 7, table II, which has the mean
 * spectrum of speech and music; loudness is K-weighted as in ITU-R BS.1770, Annex 1, without gates,
 * for the noise is steady. The weighting is built from the analogue filters that its published
 * coefficients at 48 kHz are made of: a shelf of 4 dB with its poles at 1682 Hz and a high-pass at
 * 38.1 Hz. The printed high-pass lets 0.04 dB more through at all frequencies, which no change
 * depends on.
 *
 * <p>Source: ITU-R BS.1770, Annex 1, tables 1 and 2, whose coefficients the four numbers of the two
 * filters follow from by undoing the bilinear transform.
 */
public final class ProgrammeLoudness {

  private static final double THIRD_OCTAVE = Math.pow(2, 1.0 / 3);

  /** The centres of the third octaves [Hz]. */
  private static final double[] HERTZ = {
    20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250,
    1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10_000, 12_500, 16_000, 20_000
  };

  /** The levels of the third octaves, relative to the strongest [dB]. */
  private static final double[] LEVEL_DB = {
    -13.5, -10.2, -7.4, -5.2, -3.5, -2.3, -1.4, -0.9, -0.5, -0.2, -0.1, 0, 0, 0, 0, 0, 0, -0.1,
    -0.3, -0.6, -1, -1.6, -2.5, -3.7, -5.1, -7, -9.4, -11.9, -14.8, -18.2, -21.6
  };

  private static final double SHELF_POLE_HZ = 1681.974450955533;
  private static final double SHELF_DB = 3.999843853973347;

  /** The weighting by frequency alone. The midpoint of a shelf lies √A below its poles. */
  static final Response K_WEIGHTING =
      new ResponseProduct(
          List.of(
              EqualiserPrototypes.highShelf(
                  Frequency.ofHertz(SHELF_POLE_HZ / Math.pow(10, SHELF_DB / 80)),
                  new Decibels(SHELF_DB),
                  new QualityFactor(0.7071752369554196)),
              EqualiserPrototypes.highPass(
                  Frequency.ofHertz(38.13547087602444), new QualityFactor(0.5003270373238773))));

  private static final double[] WEIGHTED_DB = K_WEIGHTING.toDecibels(HERTZ);

  private ProgrammeLoudness() {}

  /**
   * Returns the change of loudness.
   *
   * @param response what is done to the programme
   * @param lowestHz where the programme begins: third octaves wholly below it are left out [Hz], at
   *     most 20,000
   * @return the change [LU]
   */
  public static double changeLu(Response response, double lowestHz) {
    double[] changeDb = response.toDecibels(HERTZ);
    double before = 0;
    double after = 0;
    for (int i = 0; i < HERTZ.length; i++) {
      if (HERTZ[i] * Math.sqrt(THIRD_OCTAVE) >= lowestHz) {
        double weightedDb = LEVEL_DB[i] + WEIGHTED_DB[i];
        before += power(weightedDb);
        after += power(weightedDb + changeDb[i]);
      }
    }
    return 10 * Math.log10(after / before);
  }

  private static double power(double levelDb) {
    return Math.pow(10, levelDb / 10);
  }
}
