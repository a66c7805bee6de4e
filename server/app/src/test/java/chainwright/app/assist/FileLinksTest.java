package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.SourceFile;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FileLinksTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      nullValues = "-",
      value = {
        "import \"presets.chain\"~; presets.chain > /r/presets.chain",
        "chain a { take \"takes/a.wav\" 0:12 to 0:48 }~; takes/a.wav > /r/takes/a.wav",
        "chain a { take \"gone.wav\" }~; gone.wav > not there: /r/gone.wav",
        "import \"../up.chain\"~; ../up.chain > /up.chain",
        "chain a { gain 1 dB }~; -",
      })
  void path_leadsToItsFile(String text, String link) {
    SourceFile file =
        SourceFile.of("/r/a.chain", text.replace('~', '\n'), new SectionReader(Catalogue.load()));
    List<String> links =
        FileLinks.of(file, key -> !key.contains("gone")).stream()
            .map(
                found -> {
                  assertThat(found.says().contains("not there")).isEqualTo(!found.exists());
                  return file.tree().text().substring(found.span().start(), found.span().end())
                      + " > "
                      + (found.exists() ? "" : "not there: ")
                      + found.key();
                })
            .toList();
    assertThat(String.join(" ", links)).isEqualTo(link == null ? "" : link);
  }
}
