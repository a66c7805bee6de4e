package chainwright.notation.lowering;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Lowered;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One forgotten mark is one fault, and what stands in the chain keeps its meaning. */
class ForgottenBraceTest {

  private static final String BODY =
      """

        source vocal-group
        spill  acoustic-guitar

        # the rumble
        high-pass   66 Hz  18 dB/oct
        compressor  threshold -20 dBFS  ratio 2:1
          note "Slowly."
        bell        3.1 kHz  -2 dB  Q 1.8
      """;

  private static final String NEXT = "\nchain next {\n  gain -1 dB\n}\n";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "chain lead              | block-missing",
        "chain lead \"Lead\"     | block-missing",
        "chain lead \"Lead\"  # c| block-missing",
        "bus   lead \"Lead\"     | block-missing",
        "chain lead \"Lead {     | unterminated-string",
        "chain lead “Lead {      | unterminated-string",
        "chain lead \"Lead       | unterminated-string block-missing",
      })
  void chain_whoseHeadLacksAMark_hasThatFaultAndKeepsItsStages(String head, String codes) {
    SourceFile file = read(head + BODY + "}\n" + NEXT);
    assertThat(findings(file)).extracting(Finding::code).containsExactly(codes.split(" "));
    assertThat(stages(file)).containsExactly(3, 1);
    SourceFile mended = read(mended(file));
    assertThat(findings(mended)).isEmpty();
    assertThat(stages(mended)).containsExactly(3, 1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "chain lead \"Lead\"   | block-missing",
        "chain lead \"Lead\" { | missing-brace",
      })
  void chain_withoutItsLastBrace_hasOneFaultAndKeepsItsStages(String head, String code) {
    SourceFile file = read(head + BODY + NEXT);
    assertThat(findings(file)).extracting(Finding::code).containsExactly(code);
    assertThat(stages(file)).containsExactly(3, 1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "chain lead|> a note~chain next { }|block-missing",
        "chain lead||block-missing",
        "import \"a.chain\"|gain -1 dB|outside-a-chain",
      })
  void line_belowWhatHoldsNothing_isNoBlockOfIt(String head, String below, String code) {
    SourceFile file = read(head + "\n" + (below == null ? "" : below.replace('~', '\n')) + "\n");
    assertThat(findings(file)).extracting(Finding::code).contains(code);
  }

  private static SourceFile read(String text) {
    return SourceFile.of("/a.chain", text, new SectionReader(Catalogue.load()));
  }

  private static List<Finding> findings(SourceFile file) {
    return file.sections().stream().flatMap(section -> section.findings().stream()).toList();
  }

  /** How many stages each chain has. */
  private static List<Integer> stages(SourceFile file) {
    return file.sections().stream()
        .flatMap(section -> section.definition().stream())
        .map(definition -> ((Definition.Track) definition).steps().size())
        .toList();
  }

  private static String mended(SourceFile file) {
    StringBuilder text = new StringBuilder();
    for (Lowered lowered : file.sections()) {
      Section section = lowered.section();
      List<TextEdit> edits =
          lowered.findings().stream()
              .map(Finding::fixes)
              .flatMap(fixes -> fixes.stream().limit(1))
              .map(Fix::edits)
              .flatMap(List::stream)
              .map(PlacedEdit::edit)
              .toList();
      text.append(TextEdit.apply(section.text(), edits));
    }
    return text.toString();
  }
}
