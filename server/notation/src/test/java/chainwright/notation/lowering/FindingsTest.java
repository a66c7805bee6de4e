package chainwright.notation.lowering;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.Corpus;
import chainwright.notation.Mutations;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.LineIndex;
import chainwright.notation.text.TextSpan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * What a section's reading says of the conformance corpus. {@code wrong/NAME.findings} is what is
 * said of {@code wrong/NAME.chain}; {@code -Dgolden.update=true} writes these files anew, for a
 * person to read the difference. The table of the corpus is held against the findings as well.
 */
class FindingsTest {

  private static final boolean IS_UPDATE = Boolean.getBoolean("golden.update");
  private static final int MUTATIONS = Integer.getInteger("fuzz.mutations", 20_000);
  private static final SectionReader READER = new SectionReader(Catalogue.load());

  /** A session that is wrong on purpose, for reviewers to try themselves on. */
  private static final String TO_REVIEW = "demo/to-review";

  /** A row of the corpus's table: file, code, line, words. */
  private static final Pattern ROW =
      Pattern.compile("\\| *([a-z0-9-]*) *\\| *`([a-z-]+)` *\\| *(\\d+) *\\| *`(.*?)` *\\|.*");

  /** What the table expects of parts that look at more than one section, or know the rules. */
  private static final Set<String> SAID_ELSEWHERE =
      Set.of(
          "bus-loop",
          "circular-apply",
          "circular-import",
          "deliberate-silences-nothing",
          "import-not-found",
          "key-is-itself",
          "name-defined-twice",
          "unknown-bus",
          "unknown-chain",
          "unknown-preset",
          "unknown-rule",
          "value-not-offered");

  /** Files whose finding has a code of this part, but needs the session, the rules or the names. */
  private static final Set<String> NEEDS_MORE =
      Set.of(
          "session-twice",
          "spill-unknown",
          "value-above-half-the-sample-rate",
          "value-above-the-limit",
          "value-below-the-limit",
          "value-ratio-below-one",
          "value-slope-too-steep");

  /** Files of which the table says that more findings than those it lists are right as well. */
  private static final Set<String> MAY_SAY_MORE =
      Set.of("nested-too-deep", "import-without-quotes");

  @BeforeAll
  static void goldenUpdate_onABuildServer_isRefused() {
    assertThat(IS_UPDATE && System.getenv("CI") != null)
        .as("expectations are written by hand or at a desk, never by a build server")
        .isFalse();
  }

  @TestFactory
  Stream<DynamicTest> wrongFile_goldenFindings_areUnchanged() {
    return each("corpus/wrong", FindingsTest::checkGolden);
  }

  @TestFactory
  Stream<DynamicTest> wrongFile_table_isWhatIsFound() {
    Map<String, List<Row>> table = table();
    return each("corpus/wrong", path -> checkTable(path, table));
  }

  @TestFactory
  Stream<DynamicTest> wrongFile_fixThatKeepsTheSound_removesItsFinding() {
    return each("corpus/wrong", FindingsTest::checkFixes);
  }

  @TestFactory
  Stream<DynamicTest> goodFile_readBySections_hasNoError() {
    return Stream.of("corpus/right", "examples", "demo")
        .flatMap(folder -> each(folder, FindingsTest::checkNoErrors))
        .filter(test -> !test.getDisplayName().equals(TO_REVIEW));
  }

  @Test
  void read_mutations_neverThrowsAndStaysInside() {
    Mutations mutations = new Mutations(new Random(96_000), Corpus.texts());
    for (int i = 0; i < MUTATIONS; i++) {
      String text = mutations.next();
      for (Finding finding : FindingDump.findings(check(text))) {
        TextSpan all = new TextSpan(0, finding.place().section().length());
        if (!all.contains(finding.place().span())) {
          assertThat(finding).as("lies inside <%s>", text).isNull();
        }
      }
    }
  }

  /** A row of the table, or a finding in its words. */
  private record Row(String code, int line, String words) {}

  private static SourceFile check(String text) {
    return SourceFile.of("a.chain", SyntaxTree.parse(text), READER);
  }

  private static void checkGolden(Path path) throws IOException {
    String dump = FindingDump.of(check(Corpus.read(path)));
    Path golden = path.resolveSibling(stem(path) + ".findings");
    if (IS_UPDATE) {
      Files.writeString(golden, dump);
    }
    assertThat(golden).content().isEqualTo(dump);
  }

  private static void checkTable(Path path, Map<String, List<Row>> table) {
    SourceFile file = check(Corpus.read(path));
    LineIndex lines = LineIndex.of(file.tree().text());
    assertThat(table).as("every file has a row").containsKey(stem(path));
    List<Row> expected =
        table.getOrDefault(stem(path), List.of()).stream()
            .filter(row -> !SAID_ELSEWHERE.contains(row.code))
            .filter(row -> !NEEDS_MORE.contains(stem(path)))
            .toList();
    List<Row> found = new ArrayList<>();
    for (Finding finding : FindingDump.findings(file)) {
      int line = lines.lineAt(FindingDump.start(file, finding)) + 1;
      String words = FindingDump.words(finding);
      String told =
          expected.stream()
              .filter(row -> row.code.equals(finding.code()) && row.line == line)
              .map(Row::words)
              .filter(row -> row.equals(words) || words.startsWith(row + " "))
              .findFirst()
              .orElse(words);
      found.add(new Row(finding.code(), line, told));
    }
    if (MAY_SAY_MORE.contains(stem(path))) {
      assertThat(found).containsAll(expected);
    } else {
      assertThat(found).containsExactlyInAnyOrderElementsOf(expected);
    }
  }

  private static void checkFixes(Path path) {
    SourceFile file = check(Corpus.read(path));
    for (Finding finding : FindingDump.findings(file)) {
      for (Fix fix : finding.fixes()) {
        if (fix.effect() == Fix.Effect.KEEPS_THE_SOUND) {
          String after = FindingDump.apply(file, fix);
          assertThat(count(check(after), finding.code()))
              .as("`%s` leaves%n%s", fix.title(), after)
              .isLessThan(count(file, finding.code()));
        }
      }
    }
  }

  private static long count(SourceFile file, String code) {
    return FindingDump.findings(file).stream().filter(one -> one.code().equals(code)).count();
  }

  private static void checkNoErrors(Path path) {
    List<Finding> errors =
        FindingDump.findings(check(Corpus.read(path))).stream()
            .filter(one -> one.severity() == Severity.ERROR)
            .toList();
    assertThat(errors).isEmpty();
  }

  private static Map<String, List<Row>> table() {
    Map<String, List<Row>> table = new TreeMap<>();
    Path first = Corpus.files("corpus/wrong").get(0);
    Path page = Objects.requireNonNull(first.getParent()).resolveSibling("README.md");
    String file = "";
    for (String line : Corpus.read(page).lines().toList()) {
      Matcher cells = ROW.matcher(line);
      if (cells.matches()) {
        file = cells.group(1).isEmpty() ? file : cells.group(1);
        table
            .computeIfAbsent(file, key -> new ArrayList<>())
            .add(new Row(cells.group(2), Integer.parseInt(cells.group(3)), cells.group(4)));
      }
    }
    return table;
  }

  private interface Check {
    void check(Path path) throws IOException;
  }

  private static Stream<DynamicTest> each(String folder, Check check) {
    return Corpus.files(folder).stream()
        .map(path -> DynamicTest.dynamicTest(folder + "/" + stem(path), () -> check.check(path)));
  }

  private static String stem(Path path) {
    return String.valueOf(path.getFileName()).replaceFirst("\\.chain$", "");
  }
}
