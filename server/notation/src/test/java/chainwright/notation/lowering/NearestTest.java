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
        "bos       | ''",
        "cowbell   | ''",
      })
  void word_thatIsNoKindOfSource_isNearToThoseThatItMayMean(String word, String near) {
    assertThat(String.join(" ", Nearest.to(word, KINDS))).isEqualTo(near);
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
}
