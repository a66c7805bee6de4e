package chainwright.dsp.dynamics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chainwright.dsp.filter.AnaloguePrototype;
import chainwright.dsp.filter.CascadeFilter;
import chainwright.dsp.filter.Curve;
import chainwright.dsp.filter.EqualiserPrototypes;
import chainwright.dsp.signal.Wiring;
import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.SampleRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bells and shelves whose gain moves. */
class MovingBandDesignTest {

  private static final SampleRate RATE = new SampleRate(48_000);

  /** Two ways to the same filter, each rounding some 10⁴ times. */
  private static final double ROUNDING = 1e-11;

  private static final int FRAMES = 8_000;

  /**
   * The bilinear designs are those checked against reference responses of the Audio EQ Cookbook in
   * {@code ReferenceResponseTest}.
   */
  @ParameterizedTest
  @CsvSource({
    "BELL, 1000, 1, -6",
    "BELL, 3100, 4, 5",
    "BELL, 120, 0.5, -12",
    "LOW_SHELF, 150, 0.7071, 4",
    "LOW_SHELF, 150, 0.7071, -9",
    "HIGH_SHELF, 8000, 0.7071, -3",
    "HIGH_SHELF, 2000, 1.2, 6",
  })
  void movingFilter_gainThatStandsStill_isTheBilinearDesign(
      MovingBandDesign.Shape shape, double hertz, double quality, double gainDb) {
    Frequency frequency = Frequency.ofHertz(hertz);
    Decibels gain = new Decibels(gainDb);
    QualityFactor q = new QualityFactor(quality);
    AnaloguePrototype prototype =
        switch (shape) {
          case BELL -> EqualiserPrototypes.bell(frequency, gain, q);
          case LOW_SHELF -> EqualiserPrototypes.lowShelf(frequency, gain, q);
          case HIGH_SHELF -> EqualiserPrototypes.highShelf(frequency, gain, q);
        };
    double[] expected = new double[FRAMES];
    expected[0] = 1;
    new CascadeFilter(Curve.BILINEAR.design(prototype, RATE), 1)
        .process(new double[][] {expected}, 0, FRAMES);
    MovingFilter filter = new MovingFilter(shape, hertz, quality, RATE.hertz());
    for (int i = 0; i < FRAMES; i++) {
      assertThat(filter.process(i == 0 ? 1 : 0, gainDb))
          .as("sample %d", i)
          .isCloseTo(expected[i], within(ROUNDING));
    }
  }

  @Test
  void movingBand_belowItsThreshold_changesNoBit() {
    double[][] channels = new double[2][FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      channels[0][i] = 0.01 * Math.sin(0.1 * i);
      channels[1][i] = 0.01 * Math.cos(0.3 * i);
    }
    double[][] before = {channels[0].clone(), channels[1].clone()};
    design(-30).newProcessor(Wiring.ofChannels(2)).process(channels, 0, FRAMES);
    assertThat(channels).isDeepEqualTo(before);
  }

  @Test
  void movingBand_jumpsOfLevel_staysBounded() {
    double[][] channels = new double[1][FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      channels[0][i] = (i / 37) % 2 == 0 ? Math.sin(0.4 * i) : 0;
    }
    design(-60).newProcessor(Wiring.ofChannels(1)).process(channels, 0, FRAMES);
    for (double sample : channels[0]) {
      assertThat(Math.abs(sample)).isLessThan(2);
    }
  }

  private static MovingBandDesign design(double thresholdDb) {
    return new MovingBandDesign(
        MovingBandDesign.Shape.BELL,
        Frequency.ofHertz(3_000),
        new QualityFactor(2),
        new CompressorDesign(
            new MaxReductionCurve(CompressorCurve.of(thresholdDb, 4, 0), 12),
            new Detector.Peak(),
            new SmoothedBallistics(0.0001, 0.001, Smoothing.BRANCHING)),
        RATE,
        KeyInput.OWN);
  }
}
