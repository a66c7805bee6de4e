package chainwright.dsp.reverb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The times of decay over frequency, and the filter of one way that keeps to them. */
class DecayTimesTest {

  @ParameterizedTest
  @CsvSource({"1.4, 1.1, 0.7", "0.05, 0.5, 0.2", "30, 2, 1.2", "2, 2, 0.2", "2, 0.5, 1.2"})
  void times_atTheirThreeFrequencies_areTheOnesAskedFor(
      double seconds, double bassRatio, double trebleRatio) {
    DecayTimes times = new DecayTimes(seconds, bassRatio, trebleRatio);
    assertThat(times.secondsAt(Math.sqrt(500_000))).isCloseTo(seconds, within(1e-9));
    assertThat(times.secondsAt(125)).isCloseTo(bassRatio * seconds, within(1e-9));
    assertThat(times.secondsAt(4000)).isCloseTo(trebleRatio * seconds, within(1e-9));
    double longest = 0;
    for (double hertz = 1; hertz < 200_000; hertz *= 1.02) {
      double at = times.secondsAt(hertz);
      assertThat(at).isPositive();
      longest = Math.max(longest, at);
    }
    assertThat(times.longestSeconds()).isBetween(0.999 * longest, 1.001 * longest);
  }

  /** Source: Jot and Chaigne 1991: −60 dB times the length over the time of decay. */
  @ParameterizedTest
  @CsvSource({"1.4, 1.1, 0.7, 2", "2.8, 1.5, 0.3, 5", "6, 2, 0.3, 5", "1, 1, 0.2, 10"})
  void filter_ofALineOfUsualLength_takesItsShareOfTheDecay(
      double seconds, double bassRatio, double trebleRatio, double percent) {
    DecayTimes times = new DecayTimes(seconds, bassRatio, trebleRatio);
    int frames = (int) new RoomLengths(seconds, 48_000).meanFrames();
    AbsorbentFilter filter = new AbsorbentFilter(times, frames, 48_000);
    double[] impulse = new double[20_000];
    impulse[0] = 1;
    filter.process(impulse, impulse.length);
    for (double hertz : new double[] {30, 125, 250, 500, 1000, 2000, 4000, 8000}) {
      double re = 0;
      double im = 0;
      for (int i = 0; i < impulse.length; i++) {
        re += impulse[i] * Math.cos(2 * Math.PI * hertz * i / 48_000);
        im += impulse[i] * Math.sin(2 * Math.PI * hertz * i / 48_000);
      }
      double gainDb = 20 * Math.log10(Math.hypot(re, im));
      assertThat(filter.gainDb(hertz, 48_000)).isCloseTo(gainDb, within(1e-9));
      double wantedDb = -60 * frames / 48_000.0 / times.secondsAt(hertz);
      boolean isStated = hertz == 125 || hertz == 4000;
      assertThat(gainDb)
          .as("%s Hz", hertz)
          .isCloseTo(wantedDb, within(isStated ? 1e-6 : -wantedDb * percent / 100));
    }
  }

  /** What keeps a network from growing, whatever its lines: no frequency gains in any of them. */
  @Test
  void filter_ofAnyLineWithinTheLimits_raisesNoFrequency() {
    for (double rateHz : new double[] {8_000, 22_050, 48_000, 384_000}) {
      for (double seconds : new double[] {0.05, 0.3, 2, 30}) {
        for (double bassRatio : new double[] {0.5, 1, 2}) {
          for (double trebleRatio : new double[] {0.2, 0.6, 1.2}) {
            DecayTimes times = new DecayTimes(seconds, bassRatio, trebleRatio);
            for (int frames : new RoomLengths(seconds, rateHz).lines()) {
              AbsorbentFilter filter = new AbsorbentFilter(times, frames, rateHz);
              double slowestDb = -60 * frames / rateHz / times.longestSeconds();
              for (double hertz = 1; hertz < rateHz / 2; hertz *= 1.3) {
                assertThat(filter.gainDb(hertz, rateHz))
                    .as("%s %d at %s Hz of %s", times, frames, hertz, rateHz)
                    .isLessThan(slowestDb / 4);
              }
            }
          }
        }
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"0, 1, 1", "NaN, 1, 1", "1, 0.4, 1", "1, 2.1, 1", "1, 1, 0.1", "1, 1, 1.3"})
  void times_outsideTheirRanges_throw(double seconds, double bassRatio, double trebleRatio) {
    assertThatThrownBy(() -> new DecayTimes(seconds, bassRatio, trebleRatio))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
