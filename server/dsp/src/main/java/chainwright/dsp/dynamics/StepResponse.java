package chainwright.dsp.dynamics;

import java.util.Objects;
import java.util.function.DoubleUnaryOperator;

/**
 * The gain over time while a steady sine steps up in level and down again.
 *
 * <p>Index 0 is the first sample of the louder level. The simulation is deterministic and exact for
 * its sample rate; the sine is given to the detector as its level, so a peak detector shows no
 * ripple.
 */
public final class StepResponse {

  private static final int MOST_SAMPLES = 1 << 24;

  private final double[] gainDb;
  private final int releaseIndex;
  private final double sampleRateHz;

  private StepResponse(double[] gainDb, int releaseIndex, double sampleRateHz) {
    this.gainDb = gainDb;
    this.releaseIndex = releaseIndex;
    this.sampleRateHz = sampleRateHz;
  }

  /**
   * A sine that steps up and down again.
   *
   * @param lowDb the level before and after [dB re full scale], finite
   * @param highDb the level between [dB re full scale], finite
   * @param highSeconds the duration of the louder level [s], ≥ 0
   * @param lowSeconds the duration after it that is kept [s], ≥ 0
   */
  public record Step(double lowDb, double highDb, double highSeconds, double lowSeconds) {

    /**
     * Checks the step.
     *
     * @param lowDb the level before and after [dB re full scale]
     * @param highDb the level between [dB re full scale]
     * @param highSeconds the duration of the louder level [s]
     * @param lowSeconds the duration after it that is kept [s]
     * @throws IllegalArgumentException if a value is outside its range
     */
    public Step {
      Arguments.requireFinite("the low level", lowDb);
      Arguments.requireFinite("the high level", highDb);
      Arguments.requireFiniteNotNegative("the duration of the high level", highSeconds);
      Arguments.requireFiniteNotNegative("the duration of the low level", lowSeconds);
    }
  }

  /**
   * Returns the response of a compressor that had settled on the low level.
   *
   * @param design the compressor
   * @param step the levels and durations
   * @param sampleRateHz the sample rate [Hz], above 0
   * @return the gain at each sample
   * @throws IllegalArgumentException if the sample rate is not finite and above 0, or the response
   *     has more than 16 777 216 samples
   */
  public static StepResponse analyze(CompressorDesign design, Step step, double sampleRateHz) {
    Compressor compressor = design.newProcessor(sampleRateHz);
    compressor.settle(step.lowDb());
    return simulate(compressor::gainOfSineDb, step, sampleRateHz);
  }

  /**
   * Returns the response of a gate that had settled on the low level.
   *
   * @param design the gate
   * @param step the levels and durations
   * @param sampleRateHz the sample rate [Hz], above 0
   * @return the gain at each sample
   * @throws IllegalArgumentException if the sample rate is not finite and above 0, or the response
   *     has more than 16 777 216 samples
   */
  public static StepResponse analyze(GateDesign design, Step step, double sampleRateHz) {
    Gate gate = design.newProcessor(sampleRateHz);
    gate.settle(step.lowDb());
    return simulate(gate::gainOfSineDb, step, sampleRateHz);
  }

  private static StepResponse simulate(
      DoubleUnaryOperator gainOfLevel, Step step, double sampleRateHz) {
    long high = Math.round(step.highSeconds() * sampleRateHz);
    long low = Math.round(step.lowSeconds() * sampleRateHz);
    if (high > MOST_SAMPLES || low > MOST_SAMPLES - high) {
      throw new IllegalArgumentException(
          "a step response must not have more than "
              + MOST_SAMPLES
              + " samples, but had "
              + (step.highSeconds() + step.lowSeconds()) * sampleRateHz);
    }
    double[] gain = new double[(int) (high + low)];
    for (int i = 0; i < gain.length; i++) {
      gain[i] = gainOfLevel.applyAsDouble(i < high ? step.highDb() : step.lowDb());
    }
    return new StepResponse(gain, (int) high, sampleRateHz);
  }

  /**
   * Returns the number of samples.
   *
   * @return the size, ≥ 0
   */
  public int size() {
    return gainDb.length;
  }

  /**
   * Returns the index of the first sample of the low level after the high one.
   *
   * @return the index, in [0, size]
   */
  public int releaseIndex() {
    return releaseIndex;
  }

  /**
   * Returns the time of a sample.
   *
   * @param index the sample, in [0, size)
   * @return the time since the step up [s]
   * @throws IndexOutOfBoundsException if there is no such sample
   */
  public double timeSeconds(int index) {
    return Objects.checkIndex(index, gainDb.length) / sampleRateHz;
  }

  /**
   * Returns the gain at a sample, make-up gain included.
   *
   * @param index the sample, in [0, size)
   * @return the gain [dB], negative downwards
   * @throws IndexOutOfBoundsException if there is no such sample
   */
  public double gainDb(int index) {
    return gainDb[Objects.checkIndex(index, gainDb.length)];
  }
}
