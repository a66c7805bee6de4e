package chainwright.app.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.engine.rules.RuleBook;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.fault.Fault;
import chainwright.notation.lowering.SectionReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Holds every fault of the text to its folder: a page, an example that has the fault and no other,
 * with the place marked, and one about which nothing is said at all.
 */
class FaultExamplesTest {

  private static final Path PAGES = Path.of("../notation/src/main/resources/chainwright/faults");
  private static final Path CORPUS = Path.of("../../grammar/corpus/wrong");
  private static final SectionReader READER = new SectionReader(Catalogue.load());
  private static final List<String> HEADINGS =
      List.of("## What it says", "## Why", "## What to do");

  /** The recordings of the examples, which no program carries with it. */
  private static final Map<Fault, String> TAKES =
      Map.of(Fault.MISSING_TAKE, "ferry.wav", Fault.NOT_TEXT, "ferry.wav");

  /** What follows is read as if the brace were not there, and so is not closed as it should be. */
  private static final Set<Fault> DRAGS_OTHERS = Set.of(Fault.NESTED_TOO_DEEP);

  @TempDir Path folder;

  @Test
  void folders_allOfThem_areThoseOfTheFaultsThatAreNoRules() throws IOException {
    try (Stream<Path> folders = Files.list(PAGES)) {
      assertThat(folders.map(one -> one.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(faults().map(Fault::code).toList());
    }
  }

  @Test
  void codes_allThatTheCorpusIsFoundFaultWith_haveAPage() throws IOException {
    Set<String> codes = new TreeSet<>();
    for (Path file : ChainFiles.under(List.of(CORPUS))) {
      FindingDump.of(file, Files.readString(file), READER)
          .findings()
          .forEach(one -> codes.add(one.code()));
    }
    assertThat(codes)
        .hasSizeGreaterThan(50)
        .allMatch(code -> Fault.find(code).isPresent() || RuleBook.find(code).isPresent());
  }

  @TestFactory
  Stream<DynamicTest> pages_eachFault_tellWhatAndWhyAndWhatToDo() {
    return eachFault(
        fault -> {
          String page = Files.readString(PAGES.resolve(fault.code()).resolve("page.md"));
          assertThat(page.lines().findFirst().orElseThrow()).matches("# [A-Z].*[^.]");
          assertThat(page.lines().filter(line -> line.startsWith("## ")).toList())
              .isEqualTo(HEADINGS);
          assertThat(page.split("\n## [^\n]*\n", -1))
              .hasSize(HEADINGS.size() + 1)
              .noneMatch(String::isBlank);
        });
  }

  @TestFactory
  Stream<DynamicTest> failingExamples_eachFault_haveThisFaultWhereMarkedAndNoOther() {
    return eachFault(
        fault -> {
          FindingDump judged = judge(fault, "failing.chain");
          List<Finding> found =
              DRAGS_OTHERS.contains(fault) ? of(judged, fault) : judged.findings();
          assertThat(found)
              .isNotEmpty()
              .allSatisfy(one -> assertThat(one.code()).isEqualTo(fault.code()))
              .allSatisfy(one -> assertThat(one.severity()).isEqualTo(severity(fault)));
          assertThat(found.stream().map(judged::where))
              .containsExactlyInAnyOrderElementsOf(marks(judged.text(), fault.code()));
        });
  }

  @TestFactory
  Stream<DynamicTest> passingExamples_eachFault_giveNoFinding() {
    return eachFault(fault -> assertThat(judge(fault, "passing.chain")).asString().isEmpty());
  }

  /** A half-mended line may well have another fault, so not all fixes leave a clean text. */
  @TestFactory
  Stream<DynamicTest> fixes_eachThatIsPreferred_clearItsFinding() {
    return eachFault(
        fault -> {
          FindingDump judged = judge(fault, "failing.chain");
          Path file = folder.resolve(fault.code()).resolve("failing.chain");
          for (Finding finding : of(judged, fault)) {
            for (Fix fix : finding.fixes().stream().filter(Fix::isPreferred).toList()) {
              FindingDump mended = FindingDump.of(file, judged.apply(fix), READER);
              assertThat(of(mended, fault))
                  .as("%s%n%s", fix.title(), mended)
                  .hasSizeLessThan(of(judged, fault).size());
            }
          }
        });
  }

  private static List<Finding> of(FindingDump judged, Fault fault) {
    return judged.findings().stream().filter(one -> one.code().equals(fault.code())).toList();
  }

  private static Severity severity(Fault fault) {
    return fault.isError() ? Severity.ERROR : Severity.WARNING;
  }

  private static Stream<Fault> faults() {
    return Arrays.stream(Fault.values())
        .filter(Predicate.not(fault -> RuleBook.find(fault.code()).isPresent()));
  }

  /** A check of one fault that may read its files. */
  private interface Check {
    void of(Fault fault) throws IOException;
  }

  private static Stream<DynamicTest> eachFault(Check check) {
    return faults().map(fault -> DynamicTest.dynamicTest(fault.code(), () -> check.of(fault)));
  }

  /** Judges an example where it finds what it names: the files beside it and its recording. */
  private FindingDump judge(Fault fault, String name) throws IOException {
    Path copy = Files.createDirectories(folder.resolve(fault.code()));
    try (Stream<Path> files = Files.list(PAGES.resolve(fault.code()))) {
      for (Path file : files.toList()) {
        Files.writeString(copy.resolve(file.getFileName()), Files.readString(file));
      }
    }
    if (TAKES.containsKey(fault)) {
      Files.writeString(copy.resolve(TAKES.get(fault)), "");
    }
    return FindingDump.of(copy.resolve(name), Files.readString(copy.resolve(name)), READER);
  }

  /**
   * The marks of a code: comments of the form {@code # ^^^^ code} below the line they mean; of
   * {@code #^^^ code} the comment's sign is the first caret.
   */
  private static List<String> marks(String text, String code) {
    List<String> marks = new ArrayList<>();
    List<String> lines = text.lines().toList();
    int meant = 0;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (!line.matches("#\\s*\\^+ [a-z-]+")) {
        meant = i;
      } else if (line.endsWith("^ " + code)) {
        int from = line.startsWith("#^") ? 0 : line.indexOf('^');
        marks.add((meant + 1) + ":" + (from + 1) + "-" + (line.lastIndexOf('^') + 2));
      }
    }
    return marks;
  }
}
