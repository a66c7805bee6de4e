package chainwright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.app.plot.Samples;
import chainwright.engine.path.SignalPath;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is narrower than the points of a plot lie apart is drawn as deep or high as it is. */
class NarrowPlotTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "hum-removal 50 Hz harmonics 3           | 50, 100, 150",
        "bell 100 Hz -20 dB Q 30                 | 100",
        "bell 1234 Hz 9 dB Q 20                  | 1234",
        "bell 80 Hz 3 dB Q 1, notch 777 Hz Q 60  | 777",
      })
  void plot_ofSomethingNarrow_hasAPointAtEachCentre(String stages, String centres) {
    SignalPath path = DrawnPath.of(stages);
    Samples drawn = StagePlots.chain("c", path).curves().get(0).x();
    for (String centre : centres.split(", ", -1)) {
      double hertz = Double.parseDouble(centre);
      assertThat(IntStream.range(0, drawn.size()).mapToDouble(drawn::get))
          .as("%s Hz", centre)
          .anySatisfy(x -> assertThat(Math.abs(x / hertz - 1)).isLessThan(1e-9));
    }
  }
}
