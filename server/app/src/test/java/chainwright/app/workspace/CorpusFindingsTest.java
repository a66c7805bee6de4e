package chainwright.app.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.lowering.SectionReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * What a person is told of the conformance corpus: the text, the names, the files and the rules of
 * the trade together. {@code wrong/NAME.findings} is all that is said of {@code wrong/NAME.chain};
 * {@code -Dgolden.update=true} writes these files anew, for a person to read the difference. The
 * table of the corpus is held against the findings as well.
 */
class CorpusFindingsTest {

  private static final boolean IS_UPDATE = Boolean.getBoolean("golden.update");
  private static final Path GRAMMAR = Path.of("../../grammar");
  private static final SectionReader READER = new SectionReader(Catalogue.load());

  /** A session that is wrong on purpose, for reviewers to try themselves on. */
  private static final String TO_REVIEW = "demo/to-review";

  /** The takes of the demonstration are computed when {@code demo} writes it. */
  private static final String MADE_BY_DEMO = "missing-take";

  /** A row of the corpus's table: file, code, line, words. */
  private static final Pattern ROW =
      Pattern.compile("\\| *([a-z0-9-]*) *\\| *`([a-z-]+)` *\\| *(\\d+) *\\| *`(.*?)` *\\|.*");

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
    return each("corpus/wrong", CorpusFindingsTest::checkGolden);
  }

  @TestFactory
  Stream<DynamicTest> wrongFile_table_isWhatIsFound() throws IOException {
    Map<String, List<Row>> table = table();
    return each("corpus/wrong", path -> checkTable(path, table));
  }

  @TestFactory
  Stream<DynamicTest> wrongFile_fixThatKeepsTheSound_removesItsFinding() {
    return each("corpus/wrong", CorpusFindingsTest::checkFixes);
  }

  @TestFactory
  Stream<DynamicTest> goodFile_ofTheCorpus_hasNoFaultOfTheText() {
    return each("corpus/right", CorpusFindingsTest::checkNoFaultOfTheText);
  }

  @TestFactory
  Stream<DynamicTest> example_chainsThatAreDoneWell_haveNoWarning() {
    return Stream.of("examples", "demo")
        .flatMap(folder -> each(folder, CorpusFindingsTest::checkNoWarning))
        .filter(test -> !test.getDisplayName().equals(TO_REVIEW));
  }

  /** A row of the table, or a finding in its words. */
  private record Row(String code, int line, String words) {}

  private static FindingDump judge(Path path) throws IOException {
    return FindingDump.of(path, Files.readString(path), READER);
  }

  private static void checkGolden(Path path) throws IOException {
    String dump = judge(path).toString();
    Path golden = path.resolveSibling(stem(path) + ".findings");
    if (IS_UPDATE) {
      Files.writeString(golden, dump);
    }
    assertThat(golden).content().isEqualTo(dump);
  }

  private static void checkTable(Path path, Map<String, List<Row>> table) throws IOException {
    FindingDump judged = judge(path);
    assertThat(table).as("every file has a row").containsKey(stem(path));
    List<Row> expected = table.getOrDefault(stem(path), List.of());
    List<Row> found = new ArrayList<>();
    for (Finding finding : judged.findings()) {
      int line = judged.line(finding);
      String words = judged.words(finding);
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

  private static void checkFixes(Path path) throws IOException {
    FindingDump before = judge(path);
    for (Finding finding : before.findings()) {
      for (Fix fix : finding.fixes()) {
        if (fix.effect() == Fix.Effect.KEEPS_THE_SOUND) {
          FindingDump after = FindingDump.of(path, before.apply(fix), READER);
          assertThat(count(after, finding.code()))
              .as("`%s` leaves%n%s", fix.title(), after)
              .isLessThan(count(before, finding.code()));
        }
      }
    }
  }

  private static long count(FindingDump judged, String code) {
    return judged.findings().stream().filter(one -> one.code().equals(code)).count();
  }

  /** What the rules of the trade say of it is not the corpus's business. */
  private static void checkNoFaultOfTheText(Path path) throws IOException {
    assertThat(judge(path).findings())
        .filteredOn(one -> one.severity() == Severity.ERROR)
        .filteredOn(one -> one.sources().isEmpty())
        .isEmpty();
  }

  private static void checkNoWarning(Path path) throws IOException {
    assertThat(judge(path).findings())
        .filteredOn(one -> one.severity().compareTo(Severity.WARNING) <= 0)
        .filteredOn(one -> !one.code().equals(MADE_BY_DEMO))
        .isEmpty();
  }

  private static Map<String, List<Row>> table() throws IOException {
    Map<String, List<Row>> table = new TreeMap<>();
    String file = "";
    for (String line : Files.readAllLines(GRAMMAR.resolve("corpus/README.md"))) {
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
    return ChainFiles.under(List.of(GRAMMAR.resolve(folder))).stream()
        .sorted()
        .map(path -> DynamicTest.dynamicTest(folder + "/" + stem(path), () -> check.check(path)));
  }

  private static String stem(Path path) {
    return String.valueOf(path.getFileName()).replaceFirst("\\.chain$", "");
  }
}
