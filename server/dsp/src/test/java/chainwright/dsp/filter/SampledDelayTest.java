package chainwright.dsp.filter;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.quantity.SampleRate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Delays of a sampled signal against the delay that is meant, which is {@code e^(-jwt)}. */
class SampledDelayTest {

  private static final SampleRate RATE = new SampleRate(48_000);

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.01, 0.99, 12.3, -4.7, 500.25})
  void delay_betweenFrames_isFlatAndLateAsMeantTo45HundredthsOfTheRate(double frames) {
    SampledDelay delay = new SampledDelay(frames, RATE);
    double[] hertz = FrequencyGrid.logarithmic(10, 0.45 * RATE.hertz(), 200).toHertz();
    double[] levels = delay.toDecibels(hertz);
    double[] lateness = delay.toGroupDelay(hertz);
    for (int i = 0; i < hertz.length; i++) {
      assertThat(Math.abs(levels[i])).as("%f Hz", hertz[i]).isLessThan(0.01);
      assertThat(Math.abs(lateness[i] * RATE.hertz() - frames))
          .as("%f Hz", hertz[i])
          .isLessThan(0.01);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 1, 48, -3})
  void delay_ofWholeFrames_changesNoLevelAtAnyFrequency(double frames) {
    double[] hertz = {10, 1_000, 23_999};
    for (double level : new SampledDelay(frames, RATE).toDecibels(hertz)) {
      assertThat(Math.abs(level)).isLessThan(1e-12);
    }
  }
}
