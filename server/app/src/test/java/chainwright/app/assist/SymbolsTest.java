package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.SourceFile;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SymbolsTest {

  private static final List<SourceFile> FILES =
      List.of(
          read("a", "session \"Lantern\" { }\nchain lead \"Front room\" { }\nbus vocals { }\n"),
          read("b", "preset lead-guard { gain 1 dB }\nchain old-lead { }\nchain lead { }\n"));

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      nullValues = "-",
      value = {
        "lead; lead lead lead-guard old-lead",
        "LEAD-; lead-guard",
        "room; lead",
        "lgd; lead-guard",
        "xq; -",
        "lantern; Lantern",
        "''; Lantern lead lead lead-guard old-lead vocals",
      })
  void query_findsNearestFirst(String query, String names) {
    assertThat(
            Symbols.find(FILES, query, 10).stream()
                .map(Symbols.Symbol::name)
                .collect(Collectors.joining(" ")))
        .isEqualTo(names == null ? "" : names);
  }

  @Test
  void list_isBounded() {
    assertThat(Symbols.find(FILES, "", 2)).hasSize(2);
  }

  private static SourceFile read(String key, String text) {
    return SourceFile.of(key, text, new SectionReader(Catalogue.load()));
  }
}
