package chainwright.notation.lowering;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.project.NameChecks;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NearestTest {

  private static final Catalogue CATALOGUE = Catalogue.load();
  private static final List<String> KINDS =
      CATALOGUE.sources().stream().map(SourceKind::word).toList();

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "lead-vocl | lead-vocal",
        "vocal     | lead-vocal backing-vocal vocal-group",
        "vocals    | lead-vocal backing-vocal vocal-group",
        "guitar    | acoustic-guitar electric-guitar",
        "guitr     | acoustic-guitar electric-guitar",
        "drums     | drum-bus",
        "Piano     | piano",
        "kik       | kick",
        "kik-drum  | kick",
        "bass-gitar | bass",
        "gitar-acustic | acoustic-guitar",
        "mix       | mix-bus sub-mix",
        "Q         | ''",
        "bos       | ''",
        "cowbell   | ''",
      })
  void word_thatIsNoKindOfSource_isNearToThoseThatItMayMean(String word, String near) {
    assertThat(String.join(" ", Nearest.to(word, KINDS))).isEqualTo(near);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "thresh  | threshold",
        "att     | attack",
        "max-red | max-reduction",
        "re      | ''",
        "f       | ''",
        "q       | Q",
      })
  void word_thatIsTheBeginningOfASetting_isNearToIt(String word, String near) {
    List<String> settings =
        List.of("threshold", "attack", "release", "max-reduction", "reach", "Q");
    assertThat(String.join(" ", Nearest.to(word, settings))).isEqualTo(near);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "electric guitar     | electric-guitar",
        "lead vocal to mix   | lead-vocal",
        "bass guitar         | bass",
        "bass drum           | kick",
        "bass-gitar          | bass",
        "mix                 | mix-bus",
        "master              | mix-bus",
        "vox                 | lead-vocal backing-vocal",
        ": electric guitar   | electric-guitar",
        "Kick                | kick",
      })
  void source_saidInWordsOfTheTrade_isMendedToTheWholeKind(String words, String kinds) {
    String text = "chain a {\n  source" + (words.startsWith(":") ? "" : " ") + words + "\n}\n";
    assertThat(written(text, "unknown-source")).isEqualTo(kinds);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "bell 3 kz -2 dB Q 1           | kHz",
        "high-pass 60 Hz 12 dB/oktave  | dB/oct",
        "compressor attack 10 msecs    | ms",
        "delay 1 sekond                | s",
      })
  void unit_misspelt_isNearToTheUnitsThatTheStageTakes(String line, String units) {
    String text = "chain a {\n  " + line + "\n}\n";
    assertThat(written(text, "unknown-unit")).isEqualTo(units);
  }

  @ParameterizedTest
  @ValueSource(strings = {"source cowbell", "spill cowbell"})
  void source_nearToNone_isToldAllThereAre(String line) {
    SourceFile file =
        SourceFile.of("a.chain", "chain a {\n  " + line + "\n}\n", new SectionReader(CATALOGUE));
    List<Finding> findings =
        Stream.concat(
                file.sections().get(0).findings().stream(),
                NameChecks.check(new Project(List.of(file)), "a.chain", CATALOGUE).stream())
            .toList();
    assertThat(findings).hasSize(1);
    assertThat(findings.get(0).remedy()).contains(KINDS);
  }

  /** What the fixes of the first finding of a kind write. */
  private static String written(String text, String code) {
    Finding finding =
        SourceFile.of("a.chain", text, new SectionReader(CATALOGUE))
            .sections()
            .get(0)
            .findings()
            .stream()
            .filter(one -> one.code().equals(code))
            .findFirst()
            .orElseThrow();
    List<String> written =
        finding.fixes().stream().map(fix -> fix.edits().get(0).edit().newText()).toList();
    return String.join(" ", written);
  }
}
