package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.app.plot.CellText;
import chainwright.engine.rules.RuleBook;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.fault.Fault;
import chainwright.notation.lowering.Vocabulary;
import chainwright.quantity.Unit;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ExplainCommandTest {

  @TempDir Path folder;

  static Stream<String> words() {
    Catalogue catalogue = Catalogue.load();
    return Stream.of(
            catalogue.stages().stream().map(stage -> stage.word()),
            catalogue.stages().stream()
                .flatMap(stage -> stage.settings().stream())
                .map(setting -> setting.name()),
            catalogue.sources().stream().map(source -> source.word()),
            RuleBook.all().stream().map(rule -> rule.card().code()),
            Arrays.stream(Fault.values()).map(Fault::code),
            Vocabulary.all().stream().map(Vocabulary.Keyword::text),
            Arrays.stream(Unit.values()).map(Unit::symbol))
        .flatMap(all -> all)
        .distinct();
  }

  /** Whatever can be written in a chain, or found in one, can be asked about. */
  @ParameterizedTest
  @MethodSource("words")
  void word_anyOfTheNotation_hasAPageThatFitsTheTerminal(String word) {
    CommandRun run = explain(0, word);
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).doesNotContain("null");
    // The lines of an example stand as they are.
    assertThat(run.out().lines().filter(line -> !line.startsWith("      ")))
        .allSatisfy(line -> assertThat(CellText.width(line)).isLessThanOrEqualTo(80));
    assertThat(JsonParser.parseString(explain(0, "--format", "json", word).out()).isJsonObject())
        .isTrue();
    assertThat(explain(0, "--format", "markdown", word).out()).startsWith("# ");
  }

  @Test
  void stageAndSource_eachPair_hasAPage() {
    Catalogue catalogue = Catalogue.load();
    for (var stage : catalogue.stages()) {
      for (var source : catalogue.sources()) {
        assertThat(explain(0, stage.word(), source.word()).out()).contains(stage.title());
      }
      for (var setting : stage.settings()) {
        assertThat(explain(0, stage.word(), setting.name()).out()).contains(setting.name());
      }
    }
  }

  @Test
  void index_list_namesEveryStageSourceRuleFaultAndUnit() {
    String index = explain(0).out();
    words()
        .filter(word -> Catalogue.load().stage(word).isPresent() || RuleBook.find(word).isPresent())
        .forEach(word -> assertThat(index).contains(word));
    Arrays.stream(Fault.values()).forEach(fault -> assertThat(index).contains(fault.code()));
    Catalogue.load().sources().forEach(source -> assertThat(index).contains(source.word()));
    assertThat(index).contains("dB/oct").contains("side-chain");
  }

  @Test
  void rule_page_pointsAtTheFaultInItsExample() {
    List<String> lines = explain(0, "over-steep-slope").out().lines().toList();
    int marked = -1;
    for (int i = 0; i < lines.size(); i++) {
      marked = lines.get(i).contains("^^^") ? i : marked;
    }
    int caret = lines.get(marked).indexOf('^');
    assertThat(lines.get(marked - 1).substring(caret)).startsWith("36 dB/oct");
  }

  @Test
  void fault_page_pointsAtTheFaultAtTheBeginningOfALine() {
    List<String> lines = explain(0, "note-without-statement").out().lines().toList();
    String note = "> Recorded in the boat house.";
    int marked = lines.indexOf("    " + "^".repeat(note.length()));
    assertThat(marked).isPositive();
    assertThat(lines.get(marked - 1)).isEqualTo("    " + note);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "multiband {~ band below 200~ band above 200 Hz~} | cannot be computed before `200` is mended",
        "multiband {~ band below 200 Hz~ band above 300 Hz~} | cannot be computed before `300 Hz` is"
            + " mended",
        "parallel {~ path \"a\" -12~ path \"b\"~} | cannot be computed before `-12` is mended",
        "mid-side {~ mid { bell 1 kHz~}~} | Left out: bell, which cannot be computed before its gain"
            + " is written",
        "apply nothing-yet | Here: nothing, because no preset has this name",
      })
  void structure_thatIsNotComputed_saysWhy(String lines, String why) throws IOException {
    Path file = folder.resolve("a.chain");
    Files.writeString(file, "chain a {\n  " + lines.replace('~', '\n') + "\n}\n");
    assertThat(explain(0, file).out().replaceAll("\\s+", " ")).contains(why);
  }

  @Test
  void unknown_word_isRefusedWithTheNearest() throws IOException {
    Path song = Files.writeString(folder.resolve("a.chain"), "chain a {\n  gain -6 dB\n}\n");
    Path empty = Files.writeString(folder.resolve("b.chain"), "# nothing\n");
    List<List<Object>> cases =
        List.of(
            List.of("did you mean `high-pass`?", "hi-pass"),
            List.of("did you mean `over-steep-slope`?", "over-step-slope"),
            List.of("did you mean `setting-unnamed`?", "setting-unamed"),
            List.of("lists what can be explained", "zzzzzz"),
            List.of(
                "has no setting and no range for `ration`; did you mean `ratio`",
                "compressor",
                "ration"),
            List.of("nothing is called `compresor`", "compresor", "ratio"),
            List.of("belong to a chain file", "bell", "--stage", "1"),
            List.of("does not exist", folder.resolve("gone.chain")),
            List.of("is a folder", folder),
            List.of("holds no chain and no bus", empty),
            List.of("there is no chain `b`", song, "--chain", "b"),
            List.of("there is no stage `2`", song, "--stage", "2"));
    for (List<Object> one : cases) {
      CommandRun run = explain(2, one.subList(1, one.size()).toArray());
      assertThat(run.err()).as("%s", one).contains(one.get(0).toString());
      assertThat(run.out()).isEmpty();
    }
  }

  private static CommandRun explain(int code, Object... arguments) {
    CommandRun run =
        CommandRun.of(Stream.concat(Stream.of("explain"), Stream.of(arguments)).toArray());
    assertThat(run.code()).as("%s: %s", List.of(arguments), run.err()).isEqualTo(code);
    return run;
  }
}
