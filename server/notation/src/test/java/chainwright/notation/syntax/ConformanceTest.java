package chainwright.notation.syntax;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import chainwright.notation.Corpus;
import chainwright.notation.format.Formatting;
import chainwright.notation.text.LineIndex;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The conformance corpus. {@code right/NAME.tree} is the tree of {@code right/NAME.chain}; {@code
 * -Dgolden.update=true} writes the trees anew, for a person to read the difference.
 */
class ConformanceTest {

  private static final boolean IS_UPDATE = Boolean.getBoolean("golden.update");

  /** A row of the corpus's table: file, code, line. */
  private static final Pattern ROW =
      Pattern.compile("\\| *([a-z0-9-]*) *\\| *`([a-z-]+)` *\\| *(\\d+) *\\|.*");

  /** Files of which the table says that more findings than those it lists are right as well. */
  private static final Set<String> MAY_SAY_MORE =
      Set.of("nested-too-deep", "import-without-quotes");

  /** A structure that no line follows is found to lack its block by who reads the words. */
  private static final Set<String> NOTHING_TO_HOLD = Set.of("during-without-a-block");

  private static final Set<String> PARSER_CODES =
      Set.of(
          "block-missing",
          "block-of-nothing",
          "brace-on-its-own-line",
          "continues-nothing",
          "missing-blank",
          "missing-brace",
          "nested-too-deep",
          "range-with-dash",
          "slash-comment",
          "stray-character",
          "surplus-brace",
          "text-after-brace",
          "unterminated-string",
          "word-expected");

  @BeforeAll
  static void goldenUpdate_onABuildServer_isRefused() {
    assertThat(IS_UPDATE && System.getenv("CI") != null)
        .as("expectations are written by hand or at a desk, never by a build server")
        .isFalse();
  }

  @TestFactory
  Stream<DynamicTest> right_file_hasItsTreeAndNoTroubles() {
    return Corpus.files("corpus/right").stream()
        .map(file -> DynamicTest.dynamicTest(name(file), () -> checkRight(file)));
  }

  @TestFactory
  Stream<DynamicTest> example_file_hasNoTroubles() {
    return Corpus.files("examples").stream()
        .map(file -> DynamicTest.dynamicTest(name(file), () -> checkNoTroubles(file)));
  }

  /** The table was written by hand; here stands what the parser alone has to say of it. */
  @TestFactory
  Stream<DynamicTest> wrong_file_hasTheTroublesOfTheTable() {
    Map<String, Set<String>> table = table();
    return Corpus.files("corpus/wrong").stream()
        .map(file -> DynamicTest.dynamicTest(name(file), () -> checkWrong(file, table)));
  }

  private static void checkWrong(Path file, Map<String, Set<String>> table) {
    SyntaxTree tree = SyntaxTree.parse(Corpus.read(file));
    LineIndex lines = LineIndex.of(tree.text());
    Set<String> found = new TreeSet<>();
    for (int i = 0; i < tree.sections().size(); i++) {
      for (Section.Trouble trouble : tree.sections().get(i).troubles()) {
        int line = lines.lineAt(tree.startOf(i) + trouble.span().start()) + 1;
        found.add(trouble.fault().code() + " " + line);
      }
    }
    Set<String> expected = table.getOrDefault(stem(file), Set.of());
    if (MAY_SAY_MORE.contains(stem(file))) {
      assertThat(found).containsAll(expected);
    } else {
      assertThat(found).isEqualTo(expected);
    }
  }

  /** File name to the parser's codes, each with its line. */
  private static Map<String, Set<String>> table() {
    Map<String, Set<String>> table = new TreeMap<>();
    List<Path> wrong = Corpus.files("corpus/wrong");
    if (wrong.isEmpty()) {
      return table;
    }
    Path corpus = Objects.requireNonNull(wrong.get(0).getParent()).resolveSibling("README.md");
    String file = "";
    for (String row : Corpus.read(corpus).lines().toList()) {
      Matcher cells = ROW.matcher(row);
      if (cells.matches()) {
        file = cells.group(1).isEmpty() ? file : cells.group(1);
        if (PARSER_CODES.contains(cells.group(2)) && !NOTHING_TO_HOLD.contains(file)) {
          table
              .computeIfAbsent(file, key -> new TreeSet<>())
              .add(cells.group(2) + " " + cells.group(3));
        }
      }
    }
    return table;
  }

  private static void checkRight(Path file) throws IOException {
    checkNoTroubles(file);
    SyntaxTree tree = SyntaxTree.parse(Corpus.read(file));
    String formatted = Formatting.format(tree);
    assertThat(Formatting.format(SyntaxTree.parse(formatted))).isEqualTo(formatted);
    String dump = TreeDump.of(tree);
    Path golden = file.resolveSibling(stem(file) + ".tree");
    if (IS_UPDATE) {
      Files.writeString(golden, dump);
    }
    assumeTrue(Files.exists(golden), "no tree is kept for " + name(file));
    assertThat(dump).isEqualTo(Files.readString(golden));
  }

  private static void checkNoTroubles(Path file) {
    List<Section.Trouble> troubles =
        SyntaxTree.parse(Corpus.read(file)).sections().stream()
            .flatMap(section -> section.troubles().stream())
            .toList();
    assertThat(troubles).isEmpty();
  }

  private static String stem(Path file) {
    return name(file).replaceFirst("\\.chain$", "");
  }

  private static String name(Path file) {
    return String.valueOf(file.getFileName());
  }
}
