package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Lowered;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlottingTest {

  private static final String TEXT =
      """
      session "Night ferry" {
        sample-rate 48 kHz
      }

      chain lead "Lead vocal" {
        source lead-vocal

        high-pass 66 Hz 18 dB/oct  # rumble
          > Only traffic lives down there.
        compressor threshold -21 dBFS ratio 3:1 {
          note "Two decibels."
          side-chain { high-pass 120 Hz 12 dB/oct }
        }
        parallel {
          path "dry"
          path "dull" -6 dB { low-pass 2 kHz 12 dB/oct }
        }
        during 0:31 to 0:32 { bell 2.9 kHz -3 dB Q 3 }
        apply guard
      }

      preset guard {
        notch 50 Hz Q 10
      }
      """;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "66 Hz              | lead  | high-pass: −3.0 dB at 66 Hz",
        "# rumble           | lead  | high-pass: −3.0 dB at 66 Hz",
        "Only traffic       | lead  | high-pass: −3.0 dB at 66 Hz",
        "ratio              | lead  | compressor: ",
        "Two decibels       | lead  | compressor: ",
        "120 Hz             | lead  | high-pass: ",
        "parallel           | lead  | parallel: 2 paths",
        "dull               | lead  | path dull",
        "low-pass 2         | lead  | low-pass: ",
        "during             | lead  | during: ",
        "2.9 kHz            | lead  | bell: ",
        "apply guard        | lead  | apply guard: ",
        "50 Hz              | guard | notch: ",
      })
  void line_thatIsDrawn_standsBeforeTheWhole(String mark, String name, String says) {
    Plotting.Plotted plotted = at(mark).orElseThrow();
    assertThat(plotted.name()).isEqualTo(name);
    assertThat(plotted.parts()).hasSize(2);
    assertThat(plotted.parts().get(0).says()).startsWith(says).doesNotContain("**");
    assertThat(plotted.parts().get(1).says()).startsWith(name);
  }

  @ParameterizedTest
  @CsvSource({"Lead vocal, lead", "~  high, lead", "preset guard, guard"})
  void placeOfNoLine_showsTheWholeAlone(String mark, String name) {
    // The tilde stands for an empty line.
    Plotting.Plotted plotted = at(mark.replace('~', '\n')).orElseThrow();
    assertThat(plotted.parts()).hasSize(1);
    assertThat(plotted.parts().get(0).says()).startsWith(name);
  }

  @Test
  void session_hasNothingToDraw() {
    assertThat(at("sample-rate")).isEmpty();
  }

  @Test
  void indentation_belongsToItsLine() {
    assertThat(at("  high-pass 66").orElseThrow().parts().get(0).says()).startsWith("high-pass");
  }

  @Test
  void anyPlaceOfAnyExample_isDrawnWithoutTrouble() {
    int drawn = 0;
    for (Path path : ChainsAtHand.in("examples")) {
      SourceFile file = read(ChainsAtHand.text(path));
      for (Lowered section : file.sections()) {
        for (int offset = 0; offset <= section.section().length(); offset += 17) {
          int place = offset;
          Optional<Plotting.Plotted> plotted =
              section.definition().flatMap(one -> plotting(file).at(one, place));
          if (plotted.isPresent()) {
            assertThat(plotted.get().parts()).isNotEmpty();
            assertThat(plotted.get().parts())
                .allSatisfy(part -> assertThat(part.says()).isNotBlank().doesNotContain("\n"));
            drawn++;
          }
        }
      }
    }
    assertThat(drawn).isPositive();
  }

  private static Optional<Plotting.Plotted> at(String mark) {
    SourceFile file = read(TEXT);
    int place = TEXT.indexOf(mark);
    assertThat(place).as(mark).isNotNegative();
    int section = file.tree().sectionAt(place);
    return file.sections()
        .get(section)
        .definition()
        .flatMap(one -> plotting(file).at(one, place - file.tree().startOf(section)));
  }

  private static Plotting plotting(SourceFile file) {
    return new Plotting(
        new Hovering(
            new Project(List.of(file)).scope(file.key()), Catalogue.load(), Optional.empty()));
  }

  private static SourceFile read(String text) {
    return SourceFile.of("a", text, new SectionReader(Catalogue.load()));
  }
}
