package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.app.explain.Explanations;
import chainwright.app.page.TextPage;
import chainwright.app.workspace.DocumentPath;
import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Findings;
import chainwright.app.workspace.Judgements;
import chainwright.app.workspace.Workspace;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.catalogue.ValueText;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Prose;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Settings;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A value and a range are spelt in one way wherever they are read. */
class OneFormOfValuesTest {

  private static final Catalogue CATALOGUE = Catalogue.load();
  private static final SectionReader READER = new SectionReader(CATALOGUE);
  private static final TextPage PAGE = new TextPage(200, UnaryOperator.identity());

  /** A unit at both ends, thousands of the small unit, or the name of Q beside itself. */
  private static final String SECOND_FORM =
      "(?s).*(\\d (?<unit>k?Hz|dB|dBFS|dB/oct|ms|s|%) to [+\u2212-]?[\\d.]+ \\k<unit>(?![\\w/])"
          + "|(?<![\\d.])\\d{4,} (Hz|ms)\\b|`?Q`? Q \\d|(?<![:\\w.])\\d[\\d.]* to [\\d.]+:1).*";

  static Stream<StageKind> kinds() {
    return CATALOGUE.stages().stream().filter(kind -> kind.family() != Family.STRUCTURE);
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void range_inTheHoverOfAnyStage_isSpeltInTheOneForm(StageKind kind) {
    for (String source : List.of("lead-vocal", "bass", "mix-bus", "other")) {
      String text = text(source, line(kind, source));
      SourceFile file = SourceFile.of("a", text, READER);
      Definition definition = file.sections().get(0).definition().orElseThrow();
      String hover =
          new Hovering(new Project(List.of(file)).scope("a"), CATALOGUE, Optional.empty())
              .at(definition, text.indexOf("\n  " + kind.word()) + 3)
              .orElseThrow()
              .markdown();
      Settings settings =
          SettingsAt.find(definition, text.lastIndexOf('\n', text.length() - 4) + 3).orElseThrow();
      for (Setting setting : kind.settings()) {
        Optional<RangeRow> row = settings.row(setting, CATALOGUE.source(source));
        if (row.isPresent() && hover.contains("- `" + setting.name() + "`")) {
          checkRanges(hover, setting, row.get().range());
        }
      }
      assertThat(hover).doesNotMatch(SECOND_FORM);
    }
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void range_onThePageOfAnyStage_isSpeltInTheOneForm(StageKind kind) {
    String page = PAGE.render(new Explanations(CATALOGUE).explain(kind.word()).orElseThrow());
    for (Setting setting : kind.settings()) {
      setting.rows().forEach(row -> checkRanges(page, setting, row.range()));
    }
    assertThat(page).doesNotMatch(SECOND_FORM);
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void range_besideAnyProposal_isSpeltInTheOneForm(StageKind kind) {
    for (Setting setting : kind.settings()) {
      String marked = text("lead-vocal", kind.word() + " " + setting.name() + " |");
      for (Proposal proposal : Caret.in(marked).answer().proposals()) {
        String told = proposal.detail() + "\n" + String.join("\n", proposal.paragraphs());
        assertThat(told).doesNotMatch(SECOND_FORM);
        if (told.contains(setting.says()) && told.contains(": usual ")) {
          RangeRow row =
              setting.row(CATALOGUE.source("lead-vocal"), RangeRow.Direction.ANY).orElseThrow();
          checkRanges(told, setting, row.range());
          assertThat(told)
              .doesNotContain("explain " + setting.name() + "`")
              .doesNotContain("explain `");
        }
      }
    }
  }

  @Test
  void range_inTheFindingsAboutValues_isSpeltInTheOneForm() {
    List<String> told = new ArrayList<>();
    kinds()
        .forEach(
            kind -> {
              for (Setting setting : kind.settings()) {
                for (RangeRow row : setting.rows()) {
                  if (row.sources().isEmpty() && row.direction() == RangeRow.Direction.ANY) {
                    double far = 1.9 * row.range().usualHigh() - 0.9 * row.range().usualLow();
                    told.addAll(found(kind, setting, row.range(), far));
                  }
                }
              }
            });
    assertThat(told).hasSizeGreaterThan(40);
    assertThat(told).allSatisfy(one -> assertThat(one).doesNotMatch(SECOND_FORM));
  }

  private static List<String> found(
      StageKind kind, Setting setting, TradeRange range, double value) {
    String written = kind.word() + " " + setting.name() + " " + ValueText.of(setting, value);
    DocumentSnapshot document =
        DocumentSnapshot.ofDisk(
            DocumentPath.ofFile(Path.of("/nowhere/a.chain")), text("other", written), READER);
    Workspace workspace = Workspace.ofFolders(List.of(), READER);
    List<String> told = new ArrayList<>();
    for (Findings.Found found :
        Findings.of(document, workspace, new Judgements(CATALOGUE, READER.spread())).found()) {
      Finding finding = found.finding();
      if (finding.code().equals("uncommon-value") || finding.code().equals("extreme-value")) {
        assertThat(finding.what())
            .endsWith(
                Prose.set(
                    "usual is " + ValueText.range(setting, range.usualLow(), range.usualHigh())));
        told.add(finding.what() + "\n" + finding.remedy());
      }
    }
    return told;
  }

  private static void checkRanges(String text, Setting setting, TradeRange range) {
    assertThat(text)
        .contains(Prose.set(ValueText.range(setting, range.usualLow(), range.usualHigh())))
        .contains(Prose.set(ValueText.range(setting, range.cautiousLow(), range.cautiousHigh())));
  }

  /** The stage with what it needs, in usual values. */
  private static String line(StageKind kind, String source) {
    StringBuilder line = new StringBuilder();
    for (Snippet.Piece piece : Snippets.stage(kind, CATALOGUE.source(source)).pieces()) {
      if (piece instanceof Snippet.Fixed fixed) {
        line.append(fixed.text());
      } else if (piece instanceof Snippet.Stop stop) {
        line.append(stop.text());
      }
    }
    return line.toString();
  }

  private static String text(String source, String line) {
    return "chain a {\n  source " + source + "\n  " + line + "\n}\n";
  }
}
