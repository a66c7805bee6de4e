package chainwright.engine.rules;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Holds every rule to its folder: a page, an example that breaks the rule with the place marked,
 * and one that does not.
 */
class RuleExamplesTest {

  private static final Path FOLDER = Path.of("src/main/resources/chainwright/rules");
  private static final List<String> HEADINGS =
      List.of(
          "## What it says",
          "## Why",
          "## When it is rightly broken",
          "## What to do",
          "## Sources");

  @Test
  void folders_allOfThem_areThoseOfTheRules() throws IOException {
    try (Stream<Path> folders = Files.list(FOLDER)) {
      assertThat(folders.map(folder -> folder.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(
              RuleBook.all().stream().map(rule -> rule.card().code()).toList());
    }
  }

  @TestFactory
  Stream<DynamicTest> ruleNames_eachRule_areTheCodeInPascalCase() {
    return eachRule(
        rule -> {
          StringBuilder name = new StringBuilder();
          for (String word : rule.card().code().split("-", -1)) {
            name.append(word.substring(0, 1).toUpperCase(Locale.ROOT)).append(word.substring(1));
          }
          assertThat(rule.getClass().getSimpleName()).isEqualTo(name.toString());
        });
  }

  @TestFactory
  Stream<DynamicTest> pages_eachRule_tellTitleReasonAndSources() {
    return eachRule(
        rule -> {
          String page = read(rule, "page.md");
          assertThat(page).startsWith("# " + rule.card().title() + "\n");
          assertThat(page.lines().filter(line -> line.startsWith("## ")).toList())
              .isEqualTo(HEADINGS);
          assertThat(rule.card().sources()).isNotEmpty();
          for (String key : rule.card().sources()) {
            assertThat(Catalogue.load().citation(key)).as(key).isPresent();
            assertThat(page).contains(Catalogue.load().citation(key).orElseThrow().spelt());
          }
          assertThat(page.split("\n## [^\n]*\n", -1))
              .as("sections with text")
              .hasSize(HEADINGS.size() + 1)
              .noneMatch(String::isBlank);
        });
  }

  @TestFactory
  Stream<DynamicTest> failingExamples_eachRule_areFoundExactlyWhereMarked() {
    return eachRule(
        rule -> {
          JudgedText judged = JudgedText.of(read(rule, "failing.chain"));
          assertThat(judged.textFaults()).isEmpty();
          List<String> found = new ArrayList<>();
          judged.findings(rule.card().code()).forEach(one -> found.add(judged.where(one)));
          assertThat(new TreeSet<>(found))
              .isNotEmpty()
              .isEqualTo(new TreeSet<>(marks(judged.text(), rule.card().code())));
        });
  }

  @TestFactory
  Stream<DynamicTest> passingExamples_eachRule_giveNoSuchFinding() {
    return eachRule(
        rule -> {
          JudgedText judged = JudgedText.of(read(rule, "passing.chain"));
          assertThat(judged.textFaults()).isEmpty();
          assertThat(judged.findings(rule.card().code())).isEmpty();
        });
  }

  @TestFactory
  Stream<DynamicTest> fixes_eachOfThem_clearTheirFinding() {
    return eachRule(
        rule -> {
          JudgedText judged = JudgedText.of(read(rule, "failing.chain"));
          List<Finding> findings = judged.findings(rule.card().code());
          for (Finding finding : findings) {
            for (Fix fix : finding.fixes()) {
              JudgedText mended = judged.with(fix);
              assertThat(mended.textFaults()).as(mended.text()).isEmpty();
              assertThat(mended.findings(rule.card().code()))
                  .as("%s%n%s", fix.title(), mended.text())
                  .hasSizeLessThan(findings.size());
            }
          }
        });
  }

  /** Rules that no edit mends: something has to be measured, or chosen by ear. */
  private static final Set<String> WITHOUT_FIX =
      Set.of("insert-latency-unmeasured", "stacked-compressors", "too-many-bands");

  @TestFactory
  Stream<DynamicTest> findings_eachRule_carryAllThatAnEditorShows() {
    return eachRule(
        rule -> {
          JudgedText judged = JudgedText.of(read(rule, "failing.chain"));
          for (Finding finding : judged.findings(rule.card().code())) {
            checkSentence(finding.what());
            assertThat(finding.why()).isEqualTo(rule.card().why()).endsWith(".");
            assertThat(finding.remedy()).isNotBlank().endsWith(".");
            assertThat(finding.sources()).isNotEmpty().noneMatch(String::isBlank);
            String words = judged.words(finding.place());
            assertThat(words).isNotBlank().isEqualTo(words.strip()).doesNotContain("\n");
            for (Finding.Related related : finding.related()) {
              checkSentence(related.what());
              assertThat(judged.words(related.place())).isNotBlank();
              assertThat(related.place()).isNotEqualTo(finding.place());
            }
            assertThat(finding.fixes().isEmpty())
                .as("has a fix")
                .isEqualTo(WITHOUT_FIX.contains(rule.card().code()));
            assertThat(finding.fixes()).filteredOn(Fix::isPreferred).hasSizeLessThanOrEqualTo(1);
            for (Fix fix : finding.fixes()) {
              checkSentence(fix.title());
              boolean isBypassed = rule.card().code().equals("bypassed-left-behind");
              assertThat(fix.effect() == Fix.Effect.KEEPS_THE_SOUND).isEqualTo(isBypassed);
              assertThat(judged.with(fix).text()).isNotEqualTo(judged.text());
            }
          }
        });
  }

  @TestFactory
  Stream<DynamicTest> passingExamples_eachRule_giveNoWarning() {
    return eachRule(
        rule -> assertThat(JudgedText.of(read(rule, "passing.chain")).warnings()).isEmpty());
  }

  /** A part of a sentence: not blank, and without the full stop that is added where it is shown. */
  private static void checkSentence(String text) {
    assertThat(text).isNotBlank().doesNotEndWith(".").isEqualTo(text.strip());
  }

  /** A check of one rule that may read its files. */
  private interface Check {
    void of(Rule rule) throws IOException;
  }

  private static Stream<DynamicTest> eachRule(Check check) {
    return RuleBook.all().stream()
        .map(rule -> DynamicTest.dynamicTest(rule.card().code(), () -> check.of(rule)));
  }

  private static String read(Rule rule, String file) throws IOException {
    return Files.readString(FOLDER.resolve(rule.card().code()).resolve(file));
  }

  /** The marks of a code: comments of the form {@code # ^^^^ code} below the line they mean. */
  private static List<String> marks(String text, String code) {
    List<String> marks = new ArrayList<>();
    String[] lines = text.split("\n", -1);
    int meant = 0;
    for (int i = 0; i < lines.length; i++) {
      boolean isMark = lines[i].matches("\\s*#\\s*\\^+\\s+[a-z-]+\\s*");
      if (!isMark) {
        meant = i;
      } else if (lines[i].strip().endsWith("^ " + code)) {
        int from = lines[i].indexOf('^');
        int to = lines[i].lastIndexOf('^') + 1;
        marks.add((meant + 1) + ":" + (from + 1) + "-" + (to + 1));
      }
    }
    return marks;
  }
}
