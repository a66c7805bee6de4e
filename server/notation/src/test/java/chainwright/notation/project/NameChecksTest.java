package chainwright.notation.project;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.lowering.SectionReader;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NameChecksTest {

  private static final Catalogue CATALOGUE = Catalogue.load();
  private static final SectionReader READER = new SectionReader(CATALOGUE);

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "chain a {~apply gard~}; unknown-preset",
        "chain a {~to voices~}; unknown-bus",
        "chain a {~send plate -14 dB~}; unknown-bus",
        "chain a {~to a~}; not-a-bus",
        "chain a {~compressor threshold -20 dBFS key kick~}; unknown-chain",
        "chain a {~spill trombone-choir~}; unknown-source",
        "chain a {~compressor threshold -20 dBFS key a~}; key-is-itself",
        "preset a {~apply a~}; circular-apply",
        "chain a {~gain -1 dB as x~gain -1 dB as x~}; name-defined-twice",
        "chain a {~spill acoustic-guitar~};",
      })
  void name_thatMeansNothing_isFound(String lines, @Nullable String code) {
    check(lines.replace('~', '\n') + "\n", code);
  }

  @Test
  void name_definedTwice_isFoundAtTheSecond() {
    check("bus a {\n}\nbus a {\n}\n", "name-defined-twice");
  }

  @Test
  void session_aSecondOne_isFound() {
    check("session \"a\" {\n}\nsession \"b\" {\n}\n", "declared-twice");
  }

  @Test
  void import_thatComesBack_isFound() {
    SourceFile one = SourceFile.of("d/one.chain", "import \"two.chain\"\n", READER);
    SourceFile two = SourceFile.of("d/two.chain", "import \"../d/one.chain\"\n", READER);
    Project project = new Project(List.of(one, two));
    assertThat(NameChecks.check(project, "d/one.chain", CATALOGUE))
        .extracting(Finding::code)
        .containsExactly("circular-import");
  }

  @Test
  void import_ofAnUnknownFile_isFound() {
    check("import \"nowhere.chain\"\n", "import-not-found");
  }

  @Test
  void name_misspeltByOneLetter_isOfferedAsAFix() {
    String text = "preset guard {\n}\nchain a {\n  apply gard\n}\n";
    SourceFile file = SourceFile.of("a.chain", text, READER);
    List<Finding> findings = NameChecks.check(new Project(List.of(file)), "a.chain", CATALOGUE);
    assertThat(findings).hasSize(1);
    assertThat(findings.get(0).fixes()).extracting("title").containsExactly("Write `guard`");
  }

  private static void check(String text, @Nullable String code) {
    SourceFile file = SourceFile.of("a.chain", text, READER);
    List<String> codes =
        NameChecks.check(new Project(List.of(file)), "a.chain", CATALOGUE).stream()
            .map(Finding::code)
            .toList();
    if (code == null) {
      assertThat(codes).isEmpty();
    } else {
      assertThat(codes).containsExactly(code);
    }
  }
}
