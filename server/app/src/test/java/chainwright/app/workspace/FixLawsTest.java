package chainwright.app.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.lowering.TradeWords;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * What holds for every fix, whoever offers it: applied, it clears its own finding and brings no
 * error that was not there before; and there are no more errors and warnings than before.
 */
class FixLawsTest {

  private static final Path GRAMMAR = Path.of("../../grammar");
  private static final Path RULES = Path.of("../engine/src/main/resources/chainwright/rules");
  private static final SectionReader READER = new SectionReader(Catalogue.load());
  private static final Judgements JUDGEMENTS = new Judgements(READER.catalogue(), READER.spread());

  /**
   * Findings whose fix lets a line be read for the first time: what else is wrong with that line
   * was there before, unseen.
   */
  private static final Set<String> UNREAD_BEFORE =
      Set.of(
          "unknown-stage", "continues-nothing", "unknown-setting", "surplus-words", "text-missing");

  /**
   * A block deeper than any is read cannot be closed; and a usual cutoff for one high-pass moves
   * the corner that it makes with another one, of which a rule speaks.
   */
  private static final Set<String> MAY_BRING_A_WARNING =
      Set.of("nested-too-deep.chain", "untidy.chain");

  /** The closing brace of a chain, below a line that may take it up. */
  private static final Pattern BRACE_BELOW = Pattern.compile("(?m)^([^#>\\n]+)\\n\\}$");

  /** A fix that writes a value, with or without its name: its number, or its word. */
  private static final Pattern WRITE = Pattern.compile("Write `(?:[a-zA-Z-]+ )?([^ `]+)[^`]*`");

  private static final List<String> NUMBERS = List.of("-20", "0.5", "18", "3000");
  private static final List<String> UNITS = List.of("", " dB", " dBFS", " Hz", " ms", ":1");

  @TestFactory
  Stream<DynamicTest> fix_ofTheCorpus_keepsTheLaw() {
    return files(GRAMMAR, RULES)
        .map(
            path ->
                DynamicTest.dynamicTest(
                    path.toString(), () -> check(path, Files.readString(path))));
  }

  @TestFactory
  Stream<DynamicTest> fix_ofAValueWithoutName_keepsTheLaw() {
    return READER.catalogue().stages().stream()
        .filter(kind -> kind.family() != Family.STRUCTURE)
        .map(kind -> DynamicTest.dynamicTest(kind.word(), () -> checkValues(kind)));
  }

  @TestFactory
  Stream<DynamicTest> fix_ofAWordOfTheTrade_keepsTheLaw() {
    return TradeWords.all().stream()
        .map(
            word ->
                DynamicTest.dynamicTest(
                    word, () -> check(Path.of("x.chain"), "chain x {\n  " + word + "\n}\n")));
  }

  @TestFactory
  Stream<DynamicTest> fix_beforeABraceOnTheSameLine_keepsTheLaw() {
    return files(RULES)
        .map(
            path ->
                DynamicTest.dynamicTest(
                    path.toString(),
                    () ->
                        check(
                            path, BRACE_BELOW.matcher(Files.readString(path)).replaceAll("$1 }"))));
  }

  /** A finding is a sentence, what else has a part in it a phrase behind the number of a line. */
  @TestFactory
  Stream<DynamicTest> finding_ofTheCorpus_isASentenceThatBeginsInOneWay() {
    return files(GRAMMAR, RULES)
        .map(
            path ->
                DynamicTest.dynamicTest(
                    path.toString(), () -> checkWords(judge(path, Files.readString(path)))));
  }

  private static void checkWords(FindingDump judged) {
    for (Finding finding : judged.findings()) {
      assertThat(finding.what()).matches("(?s)[`\"+\\p{Lu}\\p{N}\u2212].*[^.]");
      Stream.of(finding.why(), finding.remedy())
          .filter(text -> !text.isEmpty())
          .forEach(text -> assertThat(text).matches("(?s)[`\"+\\p{Lu}\\p{N}\u2212].*[.?]"));
      assertThat(finding.related())
          .allSatisfy(one -> assertThat(one.what()).matches("(?s)[`\"\\p{Ll}\\p{N}\u2212].*[^.]"));
      for (Fix fix : finding.fixes()) {
        assertThat(fix.title()).matches("(?s)\\p{Lu}.*[^.]");
        Matcher written = WRITE.matcher(fix.title());
        if (written.matches()) {
          assertThat(finding.remedy().replace('\u2212', '-'))
              .as("%s says what its fix writes: %s", finding.code(), fix.title())
              .contains(written.group(1));
        }
      }
    }
  }

  private static void checkValues(StageKind kind) {
    for (String number : NUMBERS) {
      for (String unit : UNITS) {
        check("chain x {\n  " + kind.word() + " " + number + unit + "\n}\n");
      }
      for (Setting setting : kind.settings()) {
        check("chain x {\n  " + kind.word() + " " + setting.name() + " " + number + "\n}\n");
        check("chain x {\n  " + kind.word() + " " + setting.name() + " " + number + " dB\n}\n");
      }
    }
  }

  private static void check(String text) {
    check(Path.of("x.chain"), text);
  }

  private static void check(Path path, String text) {
    FindingDump before = judge(path, text);
    for (Finding finding : before.findings()) {
      for (Fix fix : finding.fixes()) {
        FindingDump after = judge(path, before.apply(fix));
        assertThat(said(after, finding))
            .as("`%s` clears %s in%n%s%nleft:%n%s", fix.title(), finding.what(), text, after)
            .isLessThan(said(before, finding));
        if (!UNREAD_BEFORE.contains(finding.code())) {
          assertThat(errors(after))
              .as("errors after `%s` in%n%s%nare:%n%s", fix.title(), text, after)
              .isSubsetOf(errors(before));
          if (!MAY_BRING_A_WARNING.contains(String.valueOf(path.getFileName()))) {
            assertThat(grave(after))
                .as("errors and warnings after `%s` in%n%s%nare:%n%s", fix.title(), text, after)
                .isLessThanOrEqualTo(grave(before));
          }
        }
      }
    }
  }

  private static long said(FindingDump judged, Finding finding) {
    return judged.findings().stream()
        .filter(one -> one.code().equals(finding.code()) && one.what().equals(finding.what()))
        .count();
  }

  private static long grave(FindingDump judged) {
    return judged.findings().stream()
        .filter(one -> one.severity() == Severity.ERROR || one.severity() == Severity.WARNING)
        .count();
  }

  private static List<String> errors(FindingDump judged) {
    List<String> errors = new ArrayList<>();
    for (Finding finding : judged.findings()) {
      if (finding.severity() == Severity.ERROR) {
        errors.add(finding.code());
      }
    }
    return errors;
  }

  private static FindingDump judge(Path path, String text) {
    DocumentSnapshot document =
        DocumentSnapshot.ofDisk(DocumentPath.ofFile(path.toAbsolutePath()), text, READER);
    return FindingDump.of(document, Workspace.ofFolders(List.of(), READER), JUDGEMENTS);
  }

  private static Stream<Path> files(Path... folders) {
    return ChainFiles.under(List.of(folders)).stream().sorted();
  }
}
