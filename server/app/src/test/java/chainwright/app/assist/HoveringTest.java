package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.app.plot.PlotTheme;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Lowered;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class HoveringTest {

  private static final Path EXAMPLES = Path.of("../../grammar/examples");
  private static final int MOST_CHARACTERS = 100_000;

  @Test
  void hover_anyPlaceOfAnyExample_tellsWithinBoundsWithoutHtml() throws IOException {
    int told = 0;
    for (SourceFile file : examples()) {
      Hovering hovering = hovering(file, Optional.of(PlotTheme.LIGHT));
      for (Lowered section : file.sections()) {
        int length = section.section().length();
        for (int offset = 0; offset <= length && section.definition().isPresent(); offset += 3) {
          Optional<HoverText> text = hovering.at(section.definition().get(), offset);
          if (text.isPresent()) {
            assertThat(text.get().markdown()).isNotBlank().doesNotContain("<");
            assertThat(text.get().markdown().length()).isLessThanOrEqualTo(MOST_CHARACTERS);
            assertThat(text.get().span().end()).isLessThanOrEqualTo(length);
            told++;
          }
        }
      }
    }
    assertThat(told).isPositive();
  }

  @Test
  void hover_unit_isSpoken() {
    SourceFile file = read("a", "bus mix { loudness -16 LUFS }\n");
    int offset = file.tree().text().indexOf("LUFS");
    assertThat(
            hovering(file, Optional.empty())
                .at(file.sections().get(0).definition().orElseThrow(), offset)
                .orElseThrow()
                .markdown())
        .contains("loudness units full scale");
  }

  /** Source: Butterworth's formula, half the power at the cutoff whatever the order. */
  @Test
  void hover_highPass_marksItsHalfPowerPointAndTheLowestNote() {
    SourceFile file =
        read("a", "chain lead {\n  source lead-vocal\n  high-pass 66 Hz 18 dB/oct\n}\n");
    String told =
        hovering(file, Optional.of(PlotTheme.LIGHT))
            .at(
                file.sections().get(0).definition().orElseThrow(),
                file.tree().text().indexOf("high-pass"))
            .orElseThrow()
            .markdown();
    String alternative = told.substring(told.indexOf("!["), told.indexOf("](data:"));
    assertThat(alternative).contains("3.0 dB at 66 Hz").contains("E2");
  }

  /** The whole hover as it was read and found good; its numbers are checked elsewhere. */
  @Test
  void hover_highPassInCharacters_readsAsItDid() throws IOException {
    SourceFile file =
        read("a", "chain lead {\n  source lead-vocal\n  high-pass 66 Hz 18 dB/oct\n}\n");
    String told =
        hovering(file, Optional.empty())
            .at(
                file.sections().get(0).definition().orElseThrow(),
                file.tree().text().indexOf("high-pass"))
            .orElseThrow()
            .markdown();
    assertThat(told)
        .isEqualTo(
            Files.readString(
                Path.of("src/test/resources/chainwright/app/assist/high-pass-hover.md")));
  }

  private static Hovering hovering(SourceFile file, Optional<PlotTheme> picture) {
    return new Hovering(new Project(List.of(file)).scope(file.key()), Catalogue.load(), picture);
  }

  private static SourceFile read(String key, String text) {
    return SourceFile.of(key, text, new SectionReader(Catalogue.load()));
  }

  private static List<SourceFile> examples() throws IOException {
    List<SourceFile> files = new ArrayList<>();
    try (Stream<Path> paths = Files.list(EXAMPLES)) {
      for (Path path : paths.filter(one -> one.toString().endsWith(".chain")).sorted().toList()) {
        files.add(read(path.getFileName().toString(), Files.readString(path)));
      }
    }
    return files;
  }
}
