package chainwright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.app.plot.LevelPlot;
import chainwright.app.plot.LevelReading;
import chainwright.engine.path.PathElement.StageElement;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The words within a picture. */
class PlotWordsTest {

  /** A picture shows the marks of Markdown as they are. */
  @Test
  void chain_withAStageThatCannotBeComputed_namesItWithoutMarks() {
    assertThat(StagePlots.chain("c", DrawnPath.of("bell, gain -6 dB")).curves().get(0).label())
        .isEqualTo("whole chain without bell");
  }

  /** Make-up gain lifts what leaves; what the stage turns down is the same with and without. */
  @Test
  void reading_ofACompressorWithMakeUpGain_isWhatItTurnsDown() {
    String stage = "compressor threshold -24 dBFS ratio 4:1 knee 0 dB make-up ";
    LevelReading plain = reading(stage + "0 dB");
    LevelReading lifted = reading(stage + "6 dB");
    assertThat(plain.reductionDb()).isEqualTo(4.5);
    assertThat(lifted.reductionDb()).isEqualTo(4.5);
    assertThat(lifted.outputDbfs() - plain.outputDbfs()).isEqualTo(6);
  }

  private static LevelReading reading(String stage) {
    StageElement element = (StageElement) DrawnPath.of(stage).elements().get(0);
    LevelPlot plot =
        (LevelPlot) StagePlots.stage(element, Optional.empty(), Nominal.USUAL).orElseThrow();
    return Objects.requireNonNull(plot.reading());
  }
}
