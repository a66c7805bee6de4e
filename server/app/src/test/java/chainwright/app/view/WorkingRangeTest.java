package chainwright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.app.plot.ValueRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WorkingRangeTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "high-pass 66 Hz 18 dB/oct, bell 3 kHz -2 dB Q 1.8             | 6",
        "high-pass 66 Hz 48 dB/oct, low-pass 9 kHz 24 dB/oct, gain +1 dB | 6",
        "high-pass 66 Hz 18 dB/oct, bell 300 Hz -8 dB Q 1              | 12",
        "high-pass 66 Hz 18 dB/oct, high-shelf 8 kHz +7 dB             | 12",
        "gain -12 dB, high-pass 66 Hz 18 dB/oct                        | 18",
      })
  void chain_thatDoesMoreThanFilterItsEnds_isDrawnByWhatItLetsThrough(String stages, double end) {
    assertThat(StagePlots.chain("c", DrawnPath.of(stages)).values())
        .isEqualTo(new ValueRange(-end, end));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "high-pass 66 Hz 18 dB/oct",
        "high-pass 66 Hz 18 dB/oct, compressor threshold -20 dBFS ratio 2:1",
        "bell 3 kHz -2 dB Q 1.8",
        "notch 1 kHz Q 10",
        "gain 0 dB",
      })
  void chain_withoutSkirtsOrWithNothingElse_isDrawnAsItIs(String stages) {
    assertThat(StagePlots.chain("c", DrawnPath.of(stages)).values()).isNull();
  }
}
