package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.engine.judge.Judge;
import chainwright.engine.judge.Judgement;
import chainwright.engine.rules.RuleBook;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.Section;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Laws of completion, tried on the examples and the corpus at seeded places. */
class CompletingLawsTest {

  private static final Catalogue CATALOGUE = Catalogue.load();
  private static final SectionReader READER = new SectionReader(CATALOGUE);
  private static final long SEED = 20_261_126;

  /** Carets in each example; a corpus file is a few lines and gets one. */
  private static final int CARETS = 8;

  private static final int PROPOSALS = 8;

  /** What says that a statement is not finished, as it is right after a word of it was taken. */
  private static final Set<String> UNFINISHED =
      Set.of(
          "setting-missing",
          "value-missing",
          "name-missing",
          "text-missing",
          "reason-missing",
          "range-missing",
          "block-missing",
          "block-empty",
          // A folder in a path that goes on; its quote was open before, too.
          "unterminated-string",
          "missing-take",
          "missing-import",
          "import-not-found");

  /** What rules say of a whole chain; what they say of one value must not come. */
  private static final Set<String> JUDGEMENTS =
      RuleBook.all().stream()
          .map(rule -> rule.card().code())
          .filter(code -> !Set.of("outside-limits", "frequency-above-nyquist").contains(code))
          .collect(Collectors.toSet());

  @ParameterizedTest
  @ValueSource(strings = {"examples", "corpus/right", "corpus/wrong"})
  void proposal_takenAtTheEndOfALine_bringsNoNewError(String folder) {
    tryAll(folder, true);
  }

  @ParameterizedTest
  @ValueSource(strings = {"examples", "corpus/right"})
  void proposal_takenInsideALine_bringsNoNewError(String folder) {
    tryAll(folder, false);
  }

  private static void tryAll(String folder, boolean isCutOff) {
    Random random = new Random(SEED);
    List<Path> files = ChainsAtHand.in(folder);
    List<String> failures = new ArrayList<>();
    int tried = 0;
    for (Path file : files) {
      String whole = ChainsAtHand.text(file);
      for (int i = 0; i < (folder.equals("examples") ? CARETS : 1) && !whole.isEmpty(); i++) {
        int offset = random.nextInt(whole.length() + 1);
        String text = isCutOff ? cutOff(whole, offset) : whole;
        Caret caret = Caret.in(file, text, offset);
        List<Proposal> proposals = new ArrayList<>(caret.answer().proposals());
        Collections.shuffle(proposals, random);
        boolean isHead = caret.line().filter(line -> line.head().isEmpty()).isPresent();
        boolean isFree = caret.line().filter(WrittenLine::isAtEnd).isPresent();
        if (proposals.isEmpty() || (!isFree && (isHead || isWordCut(caret)))) {
          continue;
        }
        Set<String> before = errors(file, text, caret);
        // What is wrong with the words before the caret may show only when the line is finished.
        before.addAll(errors(file, whole, caret));
        for (Proposal proposal : proposals.subList(0, Math.min(PROPOSALS, proposals.size()))) {
          Set<String> after = errors(file, caret.after(proposal), caret);
          after.removeAll(before);
          after.removeAll(UNFINISHED);
          after.removeAll(JUDGEMENTS);
          tried++;
          if (!after.isEmpty()) {
            failures.add(
                file.getFileName()
                    + ": `"
                    + lineOf(text, offset)
                    + "` + `"
                    + proposal.text()
                    + "`: "
                    + after);
          }
        }
      }
    }
    assertThat(failures).as("of %d tried", tried).isEmpty();
    assertThat(tried).isGreaterThan(50);
  }

  /** Another word in place of one that has its values behind it already fits by chance only. */
  private static boolean isWordCut(Caret caret) {
    return caret.line().filter(line -> line.wordEnd() > line.typed().start()).isPresent();
  }

  /** Leaves out what stands behind the caret on its line, except braces. */
  private static String cutOff(String text, int offset) {
    int end = offset;
    while (end < text.length() && "\r\n".indexOf(text.charAt(end)) < 0) {
      end++;
    }
    String braces = text.substring(offset, end).replaceAll("[^{}]", "");
    boolean isBalanced = braces.isEmpty() || braces.matches("\\}+");
    return isBalanced ? text.substring(0, offset) + braces + text.substring(end) : text;
  }

  private static String lineOf(String text, int offset) {
    int start = text.lastIndexOf('\n', offset - 1) + 1;
    int end = text.indexOf('\n', offset);
    return text.substring(start, offset)
        + "|"
        + text.substring(offset, end < 0 ? text.length() : end);
  }

  /** The codes of the errors on the caret's line, and of the syntax errors in its section. */
  private static Set<String> errors(Path file, String text, Caret caret) {
    SourceFile read = SourceFile.of(file.toString(), text, READER);
    List<SourceFile> all = new ArrayList<>(List.of(read));
    for (String imported : read.imports()) {
      Path path = Path.of(imported);
      if (path.toFile().isFile() && !path.equals(file)) {
        all.add(SourceFile.of(imported, ChainsAtHand.text(path), READER));
      }
    }
    int place = caret.start() + caret.line().orElseThrow().typed().start();
    int index = read.tree().sectionAt(Math.min(place, text.length()));
    Section section = read.tree().sections().get(index);
    Set<String> codes = new TreeSet<>();
    section.troubles().stream().map(trouble -> trouble.fault().code()).forEach(codes::add);
    int line = lineAt(text, place);
    codes.addAll(
        new Judge(CATALOGUE)
            .judge(new Project(all), file.toString(), Judgement.NONE).findings().stream()
                .filter(finding -> finding.severity() == Severity.ERROR)
                .filter(finding -> finding.place().section() == section)
                .filter(
                    finding ->
                        lineAt(text, read.tree().startOf(index) + finding.place().span().start())
                            == line)
                .map(Finding::code)
                .collect(Collectors.toSet()));
    return codes;
  }

  private static int lineAt(String text, int offset) {
    return (int)
        text.substring(0, Math.min(offset, text.length())).chars().filter(c -> c == '\n').count();
  }
}
