package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Definition;
import chainwright.notation.project.SourceFile;
import chainwright.notation.text.TextSpan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RewritesTest {

  private static final Path EXAMPLES = Path.of("../../grammar/examples");

  /** 1 oct is Q 1.4142, the root of 2. Source: Audio EQ Cookbook (W3C Group Note). */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "bell 3.1 kHz -2 dB Q 1.4142 as bite | bell 3.1 kHz -2 dB 1 oct as bite",
        "bell 3.1 kHz -2 dB 1 oct            | bell 3.1 kHz -2 dB Q 1.4142",
        "notch 50 Hz Q 8                     | notch 50 Hz 0.1802 oct",
        "high-shelf 8 kHz +2 dB Q 0.7        | ''",
        "high-pass 60 Hz 12 dB/oct Q 0.7     | ''",
        "bell 3.1 kHz -2 dB                  | ''",
      })
  void width_ofAStage_isWrittenTheOtherWay(String line, String expected) {
    String text = "chain a {\n  " + line + "\n}\n";
    Definition definition = definition(text);
    List<Rewrite> rewrites = WidthRewrites.in(definition, new TextSpan(14, 14));
    assertThat(rewrites).hasSize(expected.isEmpty() ? 0 : 1);
    for (Rewrite rewrite : rewrites) {
      assertThat(apply(text, rewrite)).isEqualTo("chain a {\n  " + expected + "\n}\n");
    }
  }

  @Test
  void order_ofAMixedUpChain_bringsNotesCommentsAndLabelsAlong() {
    String text =
        """
        chain lead {
          source lead-vocal

          # last word on the room
          bell 300 Hz +2 dB Q 1 as warmth  # by ear
            note "A little."

          compressor threshold -20 dBFS ratio 2:1
            > Gentle.
          # traffic
          high-pass 66 Hz 18 dB/oct
          bell 3 kHz -2 dB Q 2
        }
        """;
    Rewrite rewrite = UsualOrder.of(definition(text)).orElseThrow();
    assertThat(rewrite.title())
        .isEqualTo(
            "Put the stages into the usual order: `high-pass`, `bell`, `compressor`, `bell`"
                + " (changes the sound)");
    assertThat(apply(text, rewrite))
        .isEqualTo(
            """
            chain lead {
              source lead-vocal

              # traffic
              high-pass 66 Hz 18 dB/oct

              bell 3 kHz -2 dB Q 2
              compressor threshold -20 dBFS ratio 2:1
                > Gentle.
              # last word on the room
              bell 300 Hz +2 dB Q 1 as warmth  # by ear
                note "A little."
            }
            """);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "chain a { high-pass 60 Hz 12 dB/oct }\n",
        "chain a {\n high-pass 60 Hz 12 dB/oct\n compressor threshold -20 dBFS ratio 2:1\n}\n",
        "chain a {\n compressor threshold -20 dBFS ratio 2:1\n apply x\n high-pass 60 Hz\n}\n",
        "session \"x\" {\n sample-rate 48 kHz\n}\n",
      })
  void order_usualOrHeldByAStructure_isLeftAlone(String text) {
    assertThat(UsualOrder.of(definition(text))).isEmpty();
  }

  /** Whatever is moved, the same lines are there afterwards, and there is nothing left to move. */
  @Test
  void order_ofEveryExample_keepsEveryLineAndIsThenUsual() throws IOException {
    int sorted = 0;
    try (Stream<Path> paths = Files.list(EXAMPLES)) {
      for (Path path : paths.filter(one -> one.toString().endsWith(".chain")).sorted().toList()) {
        for (Definition definition : read(Files.readString(path)).definitions()) {
          String text = definition.section().text();
          Optional<Rewrite> rewrite = UsualOrder.of(definition);
          if (rewrite.isPresent()) {
            String after = apply(text, rewrite.get());
            assertThat(after.lines().sorted().toList())
                .as("%s", path)
                .isEqualTo(text.lines().sorted().toList());
            assertThat(UsualOrder.of(definition(after))).as("%s", path).isEmpty();
            sorted++;
          }
        }
      }
    }
    assertThat(sorted).isPositive();
  }

  private static String apply(String text, Rewrite rewrite) {
    List<PlacedEdit> edits = new ArrayList<>(rewrite.edits());
    edits.sort(Comparator.comparingInt(placed -> -placed.edit().span().start()));
    StringBuilder after = new StringBuilder(text);
    for (PlacedEdit placed : edits) {
      after.replace(
          placed.edit().span().start(), placed.edit().span().end(), placed.edit().newText());
    }
    return after.toString();
  }

  private static Definition definition(String text) {
    return read(text).sections().get(0).definition().orElseThrow();
  }

  private static SourceFile read(String text) {
    return SourceFile.of("a", text, new SectionReader(Catalogue.load()));
  }
}
