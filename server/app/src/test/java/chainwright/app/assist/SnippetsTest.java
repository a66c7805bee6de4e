package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.engine.judge.Judge;
import chainwright.engine.judge.Judgement;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.lowering.Vocabulary;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** A snippet whose stops are left as they are is a text without an error. */
class SnippetsTest {

  private static final Catalogue CATALOGUE = Catalogue.load();

  @Test
  void stage_forEverySource_hasNoErrorAsItStands() {
    List<String> wrong = new ArrayList<>();
    for (SourceKind source : CATALOGUE.sources()) {
      for (StageKind kind : CATALOGUE.stages()) {
        String line = text(Snippets.stage(kind, Optional.of(source)));
        boolean isStage = kind.family() != Family.STRUCTURE;
        // A threshold that nothing but the recording tells is a stop without a value.
        boolean isWhole = !line.contains("  ") && !line.endsWith(" ");
        if (isStage && isWhole) {
          errors("chain a {\n  source " + source.word() + "\n  " + line + "\n}\n")
              .forEach(error -> wrong.add(source.word() + ": " + line + ": " + error));
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void stage_withAValueThatOnlyTheRecordingTells_leavesItsStopEmpty() {
    assertThat(
            CATALOGUE.stages().stream()
                .filter(kind -> kind.family() != Family.STRUCTURE)
                .filter(kind -> text(Snippets.stage(kind, Optional.empty())).matches(".*( $|  ).*"))
                .map(StageKind::word))
        .containsExactlyInAnyOrder(
            "ride", "de-ess", "dynamic-bell", "dynamic-shelf", "ducker", "treble-limiter");
  }

  @Test
  void word_asItStands_hasNoErrorButNamesThatAreToBeInvented() {
    List<String> wrong = new ArrayList<>();
    for (Vocabulary.Keyword keyword : Vocabulary.all()) {
      Snippets.word(keyword.text())
          .map(SnippetsTest::text)
          .ifPresent(
              text ->
                  errors(placed(keyword, text))
                      .forEach(error -> wrong.add(keyword.text() + ": " + error)));
    }
    assertThat(wrong).isEmpty();
  }

  private static String placed(Vocabulary.Keyword keyword, String text) {
    return switch (keyword.place()) {
      case TOP -> text;
      case SESSION -> "session \"x\" {\n" + text + "\n}";
      case DECLARATION, STRUCTURE, CLAUSE -> "chain a {\n" + text + "\n}";
      case PART -> "chain a {\n" + part(keyword.text(), text) + "\n}";
    };
  }

  private static String part(String word, String text) {
    return switch (word) {
      case "path" -> "parallel {\n" + text + "\n}";
      case "mid", "side" -> "mid-side {\n" + text + "\n}";
      case "side-chain" -> "compressor threshold -20 dBFS {\n" + text + "\n}";
      default -> text;
    };
  }

  private static List<String> errors(String text) {
    SourceFile file = SourceFile.of("/a.chain", text, new SectionReader(CATALOGUE));
    // A device has no level without an alignment; a file and a take have to be named.
    Set<String> expected =
        Set.of("alignment-missing", "insert-latency-unmeasured", "import-not-found");
    return new Judge(CATALOGUE)
        .judge(new Project(List.of(file)), "/a.chain", Judgement.NONE).findings().stream()
            .filter(finding -> finding.severity() == Severity.ERROR)
            .map(Finding::code)
            .filter(code -> !expected.contains(code))
            .toList();
  }

  /** What an editor writes before any stop is changed. */
  private static String text(Snippet snippet) {
    StringBuilder text = new StringBuilder();
    List<String> stops = new ArrayList<>();
    for (Snippet.Piece piece : snippet.pieces()) {
      if (piece instanceof Snippet.Fixed fixed) {
        text.append(fixed.text());
      } else if (piece instanceof Snippet.Stop stop) {
        stops.add(stop.text());
        text.append(stop.text());
      } else if (piece instanceof Snippet.Same same) {
        text.append(stops.get(same.stop() - 1));
      }
    }
    return text.toString();
  }
}
