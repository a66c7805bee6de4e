package chainwright.dsp.nonlinear;

import java.util.Arrays;
import java.util.Objects;
import java.util.function.IntToDoubleFunction;

/**
 * The harmonics that a non-linearity makes of a sine A sin θ: the sum over n of bₙ sin nθ + aₙ cos
 * nθ, and a DC offset.
 *
 * <p>Source of THD: IEC 60268-3, 14.12 (relative to the fundamental, or to the total), as quoted in
 * public transcriptions.
 */
public final class Harmonics {

  /**
   * The number of harmonics that THD counts where nothing else is said: 20, all below 20 kHz at 1
   * kHz.
   */
  public static final int THD_COUNT = 20;

  private final double[] sines;
  private final double[] cosines;

  /** Takes both arrays as they are; index 0 holds the offset, on the cosine. */
  Harmonics(double[] sines, double[] cosines) {
    this.sines = sines;
    this.cosines = cosines;
  }

  /**
   * Returns the harmonics of a sine of this level.
   *
   * @param shaper the non-linearity
   * @param levelDbfs the peak level of the sine [dBFS], finite; −18 is the alignment level of EBU R
   *     68
   * @param count the number of harmonics, ≥ 1
   * @return harmonics 1 to count
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public static Harmonics analyze(Shaper shaper, double levelDbfs, int count) {
    return shaper.harmonicsOfSine(toAmplitude(levelDbfs), count);
  }

  /**
   * Returns the first 20 harmonics of a sine of this level.
   *
   * @param shaper the non-linearity
   * @param levelDbfs the peak level of the sine [dBFS], finite
   * @return harmonics 1 to 20
   * @throws IllegalArgumentException if the level is not finite
   */
  public static Harmonics analyze(Shaper shaper, double levelDbfs) {
    return analyze(shaper, levelDbfs, THD_COUNT);
  }

  /** Returns harmonics of a symmetric shaper; the function is asked for odd n only. */
  static Harmonics ofOddSines(int count, IntToDoubleFunction sineOfHarmonic) {
    requireSine(1, count);
    double[] sines = new double[count + 1];
    for (int n = 1; n <= count; n += 2) {
      sines[n] = sineOfHarmonic.applyAsDouble(n);
    }
    return new Harmonics(sines, new double[count + 1]);
  }

  static void requireSine(double peakAmplitude, int count) {
    if (!(peakAmplitude > 0) || Double.isInfinite(peakAmplitude)) {
      throw new IllegalArgumentException(
          "the amplitude must be finite and above 0, but was " + peakAmplitude);
    }
    if (count < 1) {
      throw new IllegalArgumentException("the count must be at least 1, but was " + count);
    }
  }

  static double toAmplitude(double levelDb) {
    return Math.pow(10, levelDb / 20);
  }

  /**
   * Returns how many harmonics there are, the fundamental included.
   *
   * @return the count, ≥ 1
   */
  public int count() {
    return sines.length - 1;
  }

  /**
   * Returns the offset that the sine causes.
   *
   * @return the mean of the output, full scale 1.0
   */
  public double dcOffset() {
    return cosines[0];
  }

  /**
   * Returns the part of a harmonic on sin nθ, bₙ.
   *
   * @param harmonic n, in [1, count]
   * @return the coefficient, signed, full scale 1.0
   * @throws IndexOutOfBoundsException if there is no such harmonic
   */
  public double sineAmplitude(int harmonic) {
    return sines[index(harmonic)];
  }

  /**
   * Returns the part of a harmonic on cos nθ, aₙ.
   *
   * @param harmonic n, in [1, count]
   * @return the coefficient, signed, full scale 1.0
   * @throws IndexOutOfBoundsException if there is no such harmonic
   */
  public double cosineAmplitude(int harmonic) {
    return cosines[index(harmonic)];
  }

  /**
   * Returns the amplitude of a harmonic.
   *
   * @param harmonic n, in [1, count]
   * @return the amplitude, ≥ 0, full scale 1.0
   * @throws IndexOutOfBoundsException if there is no such harmonic
   */
  public double amplitude(int harmonic) {
    int n = index(harmonic);
    return Math.hypot(sines[n], cosines[n]);
  }

  /**
   * Returns the phase of a harmonic, φ in amplitude · sin(nθ + φ).
   *
   * @param harmonic n, in [1, count]
   * @return the phase [rad], in [−π, π]; 0 where there is no such harmonic in the wave
   * @throws IndexOutOfBoundsException if there is no such harmonic
   */
  public double phaseRadians(int harmonic) {
    int n = index(harmonic);
    return Math.atan2(cosines[n], sines[n]);
  }

  /**
   * Returns the peak level of a harmonic.
   *
   * @param harmonic n, in [1, count]
   * @return the level [dBFS]; −∞ where it is not in the wave
   * @throws IndexOutOfBoundsException if there is no such harmonic
   */
  public double levelDbfs(int harmonic) {
    return 20 * Math.log10(amplitude(harmonic));
  }

  /**
   * Returns the distortion relative to the fundamental, THD_F.
   *
   * @return the root of the summed squares of harmonics 2 to count over the fundamental, ≥ 0
   */
  public double thdShare() {
    return distortion() / amplitude(1);
  }

  /**
   * Returns the distortion relative to all harmonics, THD_R.
   *
   * @return the root of the summed squares of harmonics 2 to count over that of 1 to count, in [0,
   *     1]
   */
  public double thdOfTotalShare() {
    double distortion = distortion();
    return distortion / Math.hypot(distortion, amplitude(1));
  }

  /**
   * Returns the harmonics of a mix with the sine that went in.
   *
   * @param wetShare the share of these harmonics, in [0, 1]; the rest is the sine
   * @param levelDbfs the peak level of the sine [dBFS], finite
   * @return the harmonics of the mix
   */
  public Harmonics withDry(double wetShare, double levelDbfs) {
    Harmonics mix = scaledBy(wetShare);
    mix.sines[1] += (1 - wetShare) * toAmplitude(levelDbfs);
    return mix;
  }

  private double distortion() {
    double squares = 0;
    for (int n = 2; n < sines.length; n++) {
      squares += sines[n] * sines[n] + cosines[n] * cosines[n];
    }
    return Math.sqrt(squares);
  }

  Harmonics scaledBy(double factor) {
    return new Harmonics(
        Arrays.stream(sines).map(sine -> factor * sine).toArray(),
        Arrays.stream(cosines).map(cosine -> factor * cosine).toArray());
  }

  private int index(int harmonic) {
    return 1 + Objects.checkIndex(harmonic - 1, count());
  }
}
