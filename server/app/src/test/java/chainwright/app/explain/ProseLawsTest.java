package chainwright.app.explain;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.app.page.Page;
import chainwright.app.page.TextPage;
import chainwright.engine.rules.RuleBook;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.lowering.Vocabulary;
import chainwright.quantity.Unit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a person reads is set in one way, and said in whole sentences. */
class ProseLawsTest {

  private static final Catalogue CATALOGUE = Catalogue.load();
  private static final Explanations EXPLANATIONS = new Explanations(CATALOGUE);
  private static final Path HOVERS = Path.of("src/test/resources/chainwright/app/assist/hovers");

  /** A hyphen as the sign of a number. */
  private static final String TYPED_MINUS = "(?s).*(?<![\\p{L}\\p{N}.])-(?=\\d).*";

  /** Marks of a note to oneself instead of a sentence to somebody. */
  private static final String CLIPPED =
      "(?s).*(Not meant:|\\be\\.g\\.|\\bi\\.e\\.|\\betc\\.|\\w_\\w|downgrade).*";

  static Stream<String> topics() {
    return Stream.of(
            CATALOGUE.stages().stream().map(StageKind::word),
            CATALOGUE.sources().stream().map(SourceKind::word),
            CATALOGUE.stages().stream().flatMap(one -> one.settings().stream()).map(Setting::name),
            RuleBook.all().stream().map(rule -> rule.card().code()),
            FindingPage.faults().stream().map(fault -> fault.code()),
            Vocabulary.all().stream().map(word -> word.text()),
            Arrays.stream(Unit.values()).map(Unit::symbol))
        .flatMap(words -> words)
        .distinct();
  }

  @ParameterizedTest
  @MethodSource("topics")
  void page_anyTopic_hasOneMinusSignAndNoClippedPhrase(String topic) {
    Optional<Page> page = EXPLANATIONS.explain(topic);
    assertThat(page).as(topic).isPresent();
    String text =
        new TextPage(100, UnaryOperator.identity())
            .render(page.get())
            .lines()
            .filter(line -> !line.startsWith("    "))
            .reduce("", (all, line) -> all + "\n" + line);
    assertThat(unquoted(text)).doesNotMatch(TYPED_MINUS).doesNotMatch(CLIPPED);
  }

  @TestFactory
  Stream<DynamicTest> hover_anyThatWasLookedAt_hasOneMinusSign() throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.list(HOVERS)) {
      files = all.sorted().toList();
    }
    assertThat(files).isNotEmpty();
    return files.stream()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () -> assertThat(unquoted(Files.readString(file))).doesNotMatch(TYPED_MINUS)));
  }

  @Test
  void catalogue_whatItSays_isSentences() {
    for (StageKind stage : CATALOGUE.stages()) {
      Stream.concat(
              Stream.of(stage.says(), stage.overdone(), stage.place()),
              stage.settings().stream().map(Setting::says))
          .forEach(
              sentence ->
                  assertThat(sentence)
                      .as(stage.word())
                      .matches("(?s)[A-Z\"].*\\.")
                      .doesNotMatch(CLIPPED)
                      .doesNotContain("(-)"));
      stage.settings().stream()
          .flatMap(setting -> setting.rows().stream())
          .map(row -> row.range().note())
          .filter(note -> !note.isEmpty())
          .forEach(note -> assertThat(note).doesNotMatch("(?s).*[.,;:]").doesNotMatch(CLIPPED));
    }
  }

  /** The pages say that cautious may reach beyond usual on the side that does less: on one. */
  @Test
  void cautious_anyRange_reachesBeyondTheUsualOnOneSideOnly() {
    for (StageKind stage : CATALOGUE.stages()) {
      for (Setting setting : stage.settings()) {
        for (RangeRow row : setting.rows()) {
          TradeRange range = row.range();
          boolean isBelow = range.cautiousLow() < range.usualLow();
          boolean isAbove = range.cautiousHigh() > range.usualHigh();
          assertThat(isBelow && isAbove).as("%s %s", stage.word(), setting.name()).isFalse();
        }
      }
    }
  }

  /** A text without what is to be typed, what is drawn and what an author has noted. */
  private static String unquoted(String text) {
    return text.replaceAll("(?s)```.*?```", "")
        .replaceAll("`[^`]*`", "")
        .replaceAll("(?m)^> .*$", "");
  }
}
