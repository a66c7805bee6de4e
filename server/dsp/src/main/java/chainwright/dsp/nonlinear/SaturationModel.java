package chainwright.dsp.nonlinear;

import java.util.Optional;

/**
 * A saturation whose distortion depends on frequency: an emphasis, a memoryless shaper, and the
 * emphasis undone.
 *
 * <p>The emphasis decides which frequencies are strong when they reach the shaper, and so distort;
 * a small signal passes flat, but for the model's own response. Made by {@link
 * SaturationSettings#design}.
 */
public final class SaturationModel {

  /** The level to which a saturation is aligned [dBFS]: −18. Source: EBU R 68-2000. */
  public static final double ALIGNMENT_LEVEL_DBFS = -18;

  /** The frequency at which distortion at alignment is stated [Hz]: 1000. */
  public static final double ALIGNMENT_FREQUENCY_HZ = 1000;

  private final EmphasisSection emphasis;
  private final DrivenShaper shaper;
  private final EmphasisSection output;
  private final Optional<BiasShift> bias;

  private SaturationModel(
      EmphasisSection emphasis,
      DrivenShaper shaper,
      EmphasisSection output,
      Optional<BiasShift> bias) {
    this.emphasis = emphasis;
    this.shaper = shaper;
    this.output = output;
    this.bias = bias;
  }

  /** Solves the shaper's drive for the distortion at alignment, and adds the settings' drive. */
  static SaturationModel of(
      SaturationSettings settings, EmphasisSection emphasis, Shaper base, EmphasisSection output) {
    double alignedDb =
        DriveSolver.solve(
            driveDb ->
                new SaturationModel(
                        emphasis, new DrivenShaper(base, driveDb), output, Optional.empty())
                    .harmonics(ALIGNMENT_FREQUENCY_HZ, ALIGNMENT_LEVEL_DBFS, Harmonics.THD_COUNT)
                    .thdShare(),
            settings.thdAtAlignmentShare());
    DrivenShaper driven = new DrivenShaper(base, alignedDb + settings.driveDb());
    return new SaturationModel(emphasis, driven, output, Optional.empty());
  }

  /**
   * Returns the same with a bias that gives way to what is driven more than 12 dB above alignment.
   *
   * @param recoverySeconds the time in which 63 % of the shift are gone [s], above 0
   * @param driveDb how much of the drive is the settings' [dB]
   */
  SaturationModel withBiasShift(double recoverySeconds, double driveDb) {
    double limit = Harmonics.toAmplitude(BiasShift.LIMIT_DBFS + shaper.driveDb() - driveDb);
    return new SaturationModel(
        emphasis, shaper, output, Optional.of(new BiasShift(limit, recoverySeconds)));
  }

  /** Returns how long a shift of the bias is to be heard after its end [s]; 0 without one. */
  double biasTailSeconds() {
    return bias.map(BiasShift::tailSeconds).orElse(0.0);
  }

  static void requireSettings(double driveDb, double thdAtAlignmentShare) {
    if (!Double.isFinite(driveDb)) {
      throw new IllegalArgumentException("the drive must be finite, but was " + driveDb);
    }
    if (!(thdAtAlignmentShare > 0 && thdAtAlignmentShare < 0.5)) {
      throw new IllegalArgumentException(
          "the THD at alignment must lie between 0 and 50 %, but was "
              + 100 * thdAtAlignmentShare
              + " %");
    }
  }

  /**
   * Returns the shaper within, driven as solved.
   *
   * @return the memoryless part
   */
  public DrivenShaper shaper() {
    return shaper;
  }

  /**
   * Returns the gain that a sine meets before the shaper, against that far from the emphasis.
   *
   * @param frequencyHz the frequency [Hz], above 0
   * @return the emphasis [dB]
   */
  public double emphasisDb(double frequencyHz) {
    return 20 * Math.log10(emphasis.at(frequencyHz).magnitude());
  }

  /**
   * Returns the gain of a small signal.
   *
   * @param frequencyHz the frequency [Hz], above 0
   * @return the gain [dB]: 0, but for a head-bump, and below 10 Hz where an offset is removed
   */
  public double smallSignalGainDb(double frequencyHz) {
    return 20 * Math.log10(output.at(frequencyHz).magnitude());
  }

  /**
   * Starts a saturation.
   *
   * @param sampleRateHz the rate it runs at, oversampling included [Hz], above 0
   * @param channelCount the number of channels, ≥ 1
   * @return a saturation that has heard silence
   * @throws IllegalArgumentException if the sample rate is not finite and above 0, or there is no
   *     channel
   */
  public Saturator newProcessor(double sampleRateHz, int channelCount) {
    return new Saturator(emphasis, shaper, output, bias, sampleRateHz, channelCount);
  }

  /**
   * Returns the harmonics of a settled sine; its offset is removed. Where it moves the bias its
   * period counts as short against the recovery.
   *
   * @param frequencyHz the frequency of the sine [Hz], finite, above 0
   * @param levelDbfs its peak level [dBFS], finite
   * @param count the number of harmonics, ≥ 1
   * @return harmonics 1 to count, with phases against the sine that went in
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public Harmonics harmonics(double frequencyHz, double levelDbfs, int count) {
    if (!(frequencyHz > 0) || Double.isInfinite(frequencyHz)) {
      throw new IllegalArgumentException(
          "the frequency must be finite and above 0 Hz, but was " + frequencyHz);
    }
    Phasor before = emphasis.at(frequencyHz);
    Harmonics shaped = shaped(Harmonics.toAmplitude(levelDbfs) * before.magnitude(), count);
    double[] sines = new double[count + 1];
    double[] cosines = new double[count + 1];
    for (int n = 1; n <= count; n++) {
      // The sine reaches the shaper turned by the emphasis, its nth harmonic n times as far.
      Phasor after = output.at(n * frequencyHz).dividedBy(emphasis.at(n * frequencyHz));
      Phasor harmonic =
          new Phasor(shaped.sineAmplitude(n), shaped.cosineAmplitude(n))
              .times(Phasor.ofAngle(n * before.angle()))
              .times(after);
      sines[n] = harmonic.re();
      cosines[n] = harmonic.im();
    }
    return new Harmonics(sines, cosines);
  }

  private Harmonics shaped(double peakAmplitude, int count) {
    double gain = Harmonics.toAmplitude(shaper.driveDb());
    return bias.map(shift -> shift.settled(shaper.base(), gain * peakAmplitude))
        .map(moved -> new DrivenShaper(moved, shaper.driveDb()))
        .orElse(shaper)
        .harmonicsOfSine(peakAmplitude, count);
  }

  /**
   * Returns the distortion of a sine, harmonics 2 to 20.
   *
   * @param frequencyHz the frequency of the sine [Hz], finite, above 0
   * @param levelDbfs its peak level [dBFS], finite
   * @return THD relative to the fundamental, ≥ 0
   * @throws IllegalArgumentException if an argument is outside its range
   */
  public double thdShare(double frequencyHz, double levelDbfs) {
    return harmonics(frequencyHz, levelDbfs, Harmonics.THD_COUNT).thdShare();
  }
}
