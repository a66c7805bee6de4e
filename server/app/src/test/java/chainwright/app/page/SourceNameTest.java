package chainwright.app.page;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Citation;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class SourceNameTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "common practice, no source | common practice, no source",
        "R. Izhaki, Mixing Audio: Concepts (Focal), chapters on equalizers (from memory)"
            + " | R. Izhaki, Mixing Audio (from memory)",
        "U. Zölzer (ed.), DAFX: Digital Audio Effects, chapters Filters (from memory)"
            + " | U. Zölzer (ed.), DAFX (from memory)",
        "S. Lipshitz, \"Quantization and Dither: A Survey\", JAES 40(5), 1992 (2 LSB) (opened:"
            + " abstract; figure from memory)"
            + " | S. Lipshitz, \"Quantization and Dither: A Survey\", JAES 40(5), 1992 (opened:"
            + " abstract; figure from memory)",
        "ITU-R BS.1770 (loudness; Annex 2 true peak) (opened: first pages)"
            + " | ITU-R BS.1770 (opened: first pages)",
        "P. Kraght, \"Aliasing\", JAES 48, 2000 (opened: abstract)"
            + " | P. Kraght, \"Aliasing\", JAES 48, 2000 (opened: abstract)",
      })
  void brief_source_leavesOutDetailsOnly(String source, String brief) {
    assertThat(SourceName.brief(source)).isEqualTo(brief);
  }

  static Stream<Citation> citations() {
    Set<String> keys = new TreeSet<>();
    Catalogue catalogue = Catalogue.load();
    return catalogue.stages().stream()
        .flatMap(stage -> stage.settings().stream())
        .flatMap(setting -> setting.rows().stream())
        .flatMap(row -> row.range().sources().stream())
        .filter(citation -> keys.add(citation.key()));
  }

  @ParameterizedTest
  @MethodSource("citations")
  void brief_citationOfTheCatalogue_endsWhereAPhraseEnds(Citation citation) {
    String brief = SourceName.brief(citation.spelt());
    assertThat(count(brief, '"') % 2).as(brief).isZero();
    assertThat(count(brief, '(')).as(brief).isEqualTo(count(brief, ')'));
    assertThat(brief.replaceFirst(" \\((from memory|opened).*\\)$", ""))
        .doesNotMatch("(?s).*([,:;\\-\u2013]| (and|or|of|the|a|in|on|for|to|with))$")
        .hasSizeGreaterThan(4);
    for (String known : List.of("(from memory", "(opened")) {
      assertThat(brief.contains(known)).as(brief).isEqualTo(citation.spelt().contains(known));
    }
  }

  private static long count(String text, char one) {
    return text.chars().filter(c -> c == one).count();
  }
}
