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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HoveringTest {

  private static final Path EXAMPLES = Path.of("../../grammar/examples");
  private static final Path RESOURCES = Path.of("src/test/resources/chainwright/app/assist");
  private static final int MOST_CHARACTERS = 100_000;

  @Test
  void hover_anyPlaceOfAnyExample_tellsWithinBoundsWithoutHtml() throws IOException {
    int told = 0;
    for (SourceFile file : examples()) {
      Hovering hovering = hovering(file, Optional.of(PlotTheme.LIGHT));
      for (Lowered section : file.sections()) {
        int length = section.section().length();
        for (int offset = 0; offset <= length && section.definition().isPresent(); offset += 13) {
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

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "high-pass 66 Hz 18 dB                 | before `18 dB` is mended",
        "compressor threshold -20 dBFS ratio 2 | before `ratio 2` is mended",
        "compressor attack 10 - 20 ms          | before `attack 10 - 20 ms` is mended and its"
            + " threshold is written",
        "bell 300 Hz Q 1.8                     | before its gain is written",
        "parallel { path \"b\" -12 { gain -1 dB } } | before `-12` is mended",
      })
  void hover_unfinishedLine_saysWhatIsWantedFirstAndDrawsNothing(String line, String why) {
    SourceFile file = read("a", "chain lead {\n  " + line + "\n}\n");
    String told =
        hovering(file, Optional.of(PlotTheme.LIGHT))
            .at(file.sections().get(0).definition().orElseThrow(), 16)
            .orElseThrow()
            .markdown();
    assertThat(told).contains("cannot be computed " + why).doesNotContain("![");
    assertThat(told).doesNotContain("4:1 (default)").doesNotContain("`slope`");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "belll 1 kHz -2 dB          | belll     | `belll` is no stage. Did you mean `bell`?",
        "source lead-vocl           | lead-vocl | Did you mean `lead-vocal`?",
        "compressor ratoi 3:1       | ratoi     | Did you mean `ratio`?",
        "bell 1 kHz -2 dB curve bil | bil       | `curve` cannot be `bil`",
        "gain -1 dbb                | dbb       | Did you mean",
      })
  void hover_wordThatIsUnknown_saysWhatItMayHaveMeant(String line, String word, String expected) {
    SourceFile file = read("a", "chain lead {\n  " + line + "\n}\n");
    String told = toldAt(file, word);
    assertThat(told.replace("\n\n", " ")).contains(expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "parallel { path \"b\" { compressor ratio 3:1 } } | parallel",
        "parallel { path \"b\" { compressor ratio 3:1 } } | path",
        "mid-side { mid { compressor ratio 3:1 } }       | mid-side",
        "during 0:01 to 0:02 { compressor ratio 3:1 }    | during",
        "insert \"x\" { compressor ratio 3:1 }           | insert",
        "compressor ratio 3:1                            | lead",
      })
  void hover_structureWithAnUnfinishedStage_saysWhatIsLeftOutAndWhy(String line, String word) {
    String broken = line.replace(" { ", " {\n").replace(" }", "\n}");
    SourceFile file = read("a", "chain lead {\n  " + broken + "\n}\n");
    String told = toldAt(file, word);
    assertThat(told)
        .contains(
            "Left out: compressor, which cannot be computed before its threshold is written.");
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
    Path golden = RESOURCES.resolve("high-pass-hover.md");
    if (Boolean.getBoolean("golden.update")) {
      Files.writeString(golden, told);
    }
    assertThat(told).isEqualTo(Files.readString(golden));
  }

  /**
   * Whole hovers as they were read and found good. The mark names the word that is pointed at; its
   * numbers are checked elsewhere.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "session        | session",
        "sample-rate    | sample-rate",
        "alignment      | alignment",
        "mains          | mains",
        "tempo          | tempo",
        "listeners      | listeners",
        "preset         | top-care",
        "chain          | lead \"Lead",
        "source         | source       lead-vocal",
        "spill          | spill",
        "take           | take         \"takes",
        "lowest-note    | lowest-note",
        "listen         | listen       0:31",
        "to             | to           voices",
        "send           | send         hall",
        "de-ess-band    | band 5.5",
        "compressor     | compressor  threshold -24",
        "attack         | attack 12",
        "key            | key guitar",
        "side-chain     | side-chain",
        "in-side-chain  | high-pass 120",
        "gate           | gate  threshold",
        "insert         | insert",
        "insert-latency | latency 1.6",
        "parallel       | parallel",
        "path           | path \"squashed\"",
        "multiband      | multiband",
        "band           | band below",
        "mid-side       | mid-side",
        "side           | side { low-shelf",
        "during         | during",
        "apply          | apply top-care",
        "bus            | voices \"Voices\"",
        "reverb         | reverb 1.8",
        "max-true-peak  | max-true-peak",
        "loudness       | loudness",
      })
  void hover_structure_readsAsItDid(String name, String mark) throws IOException {
    SourceFile file = read("a", Files.readString(RESOURCES.resolve("structures.chain")));
    int place = file.tree().text().indexOf(mark.strip());
    String told =
        hovering(file, Optional.empty())
            .at(
                file.sections().get(file.tree().sectionAt(place)).definition().orElseThrow(),
                place - file.tree().startOf(file.tree().sectionAt(place)) + 1)
            .orElseThrow()
            .markdown();
    Path golden = RESOURCES.resolve("hovers").resolve(name + ".md");
    if (Boolean.getBoolean("golden.update")) {
      Files.writeString(golden, told);
    }
    assertThat(told).isEqualTo(Files.readString(golden));
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

  /** What is told at the first place of a word, with what was found in the text. */
  private static String toldAt(SourceFile file, String word) {
    return hovering(file, Optional.empty())
        .at(
            file.sections().get(0),
            file.sections().get(0).findings(),
            file.tree().text().indexOf(word) + 1)
        .orElseThrow()
        .markdown();
  }
}
