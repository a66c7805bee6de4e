package chainwright.notation.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import chainwright.notation.syntax.Spread;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FormattingTest {

  private static final String UNTIDY =
      """
      \ufeffsession   “Untidy kitchen take” {
      sample-rate 48k
            mains 50hz



      \ttempo 92BPM

      }
      preset   guard{
      high-pass 60Hz 12dB/oct}
      chain lead "Lead"{ source lead-vocal
      to vocals fader −3 dB

         apply guard
      # half an octave down?
      high-pass 0.066 kHz 18db/octave      # steep
      bell 3100 Hz –2.5dB Q 2.20 as bite
        bell 310\u00a0Hz -1.50 dB Q 2
      de-ess band 5.5kHz to 9kHz threshold -30dbfs max-reduction 4 DB
      compressor attack 12msec release .09 s
              … ratio 3:1 threshold -21 dBFS
        note   "He said \\"inner\\"."
      >a note without the blank
      >  and its second line\s\s
         during 31.2s to 0:31.8{bell 2.9k -3dB Q 3}
      gate threshold -60 dBFS range 6dB attack 200 µs{ side-chain { high-pass 500 Hz }
      }
      }   # the end
      bus vocals "All vocals"   {}


      """;

  private static final String TIDY =
      """
      session "Untidy kitchen take" {
        sample-rate  48 kHz
        mains        50 Hz

        tempo 92 bpm
      }
      preset guard {
        high-pass 60 Hz 12 dB/oct
      }
      chain lead "Lead" {
        source  lead-vocal
        to      vocals  fader -3 dB

        apply       guard
        # half an octave down?
        high-pass   66 Hz    18 dB/oct  # steep
        bell        3.1 kHz  -2.5 dB  Q 2.2  as bite
        bell        310 Hz   -1.5 dB  Q 2
        de-ess      band 5.5 to 9 kHz  threshold -30 dBFS  max-reduction 4 dB
        compressor  attack 12 ms  release 0.09 s
          ... ratio 3:1  threshold -21 dBFS
          note "He said \\"inner\\"."
          > a note without the blank
          >  and its second line
        during 31.2 s to 0:31.8 { bell 2.9 kHz -3 dB Q 3 }
        gate  threshold -60 dBFS  range 6 dB  attack 200 us {
          side-chain { high-pass 500 Hz }
        }
      }  # the end
      bus vocals "All vocals" { }
      """;

  @Test
  void format_untidyText_isTidy() {
    check(UNTIDY, TIDY);
  }

  @Test
  void format_runOfStages_alignsWhatIsAlike() {
    check(
        """
        chain overheads {
          spill kick snare
          to mix fader -6 dB
          send plate -14 dB post-fader
          bell 420 Hz -2 dB Q 1
            note "n"
          dynamic-bell 3.8 kHz Q 2 threshold -34 dBFS
          bell 12 kHz +1.5 dB Q 0.7 as air
          polarity
          compressor threshold -22 dBFS ratio 1.6:1 key lead
          compressor threshold -8 dBFS ratio 4:1 bypassed
          gate threshold -8 dBFS range 3 dB { side-chain { high-pass 90 Hz } }
          gain 1 dB

          tilt 1 kHz +1 dB
        }
        """,
        """
        chain overheads {
          spill         kick snare
          to            mix    fader -6 dB
          send          plate  -14 dB  post-fader
          bell          420 Hz   -2 dB  Q 1
            note "n"
          dynamic-bell  3.8 kHz  Q 2  threshold -34 dBFS
          bell          12 kHz   +1.5 dB  Q 0.7  as air
          polarity
          compressor    threshold -22 dBFS  ratio 1.6:1  key lead
          compressor    threshold -8 dBFS   ratio 4:1  bypassed
          gate  threshold -8 dBFS  range 3 dB { side-chain { high-pass 90 Hz } }
          gain 1 dB

          tilt 1 kHz +1 dB
        }
        """);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "bell 3.1k|bell 3.1 kHz",
        "bell 3100Hz|bell 3.1 kHz",
        "bell 999.5 Hz|bell 999.5 Hz",
        "bell 0.05 kHz|bell 50 Hz",
        "bell 1000 Hz|bell 1 kHz",
        "gain +2DB|gain +2 dB",
        "gain 2 dB|gain 2 dB",
        "gain \u22120.50 dB|gain -0.5 dB",
        "gain -.5 dB|gain -0.5 dB",
        "gain 007.0 dB|gain 7 dB",
        "align 3 \u00b5s|align 3 us",
        "reverb blend 100%|reverb blend 100 %",
        "bell 1/3octave|bell 1/3 oct",
        "band 200Hz to 3000 Hz|band 200 Hz to 3 kHz",
        "band 2000 to 3000 Hz|band 2 to 3 kHz",
        "band 0.5 to 2 kHz|band 500 Hz to 2 kHz",
        "gain -3 dB to -1dB|gain -3 to -1 dB",
        "during 0:31.20 to 0:33|during 0:31.20 to 0:33",
        "alignment 0dBu=-18dBFS|alignment 0 dBu = -18 dBFS",
        "bell 3 parsecs|bell 3 parsecs",
        "bell 3parsecs|bell 3parsecs",
        "compressor ratio 3:1|compressor ratio 3:1",
      })
  void format_quantity_hasOneSpelling(String text, String expected) {
    check(text + "\n", expected + "\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''|''",
        "\\n \\n\\n|''",
        "#a\\n\\n\\n\\n#b|#a\\n\\n#b\\n",
        "chain a {}\\n\\n\\n\\nchain b {}|chain a { }\\n\\nchain b { }\\n",
        "chain a {\\r\\nbell\\r\\n}|chain a {\\r\\n  bell\\r\\n}\\r\\n",
        "chain a {\\rbell}|chain a {\\r  bell\\r}\\r",
        "bus a { to mix }|bus a { to mix }\\n",
        "bus a { x { to mix } }|bus a { x { to mix } }\\n",
        "chain a {\\n# c\\n}\\n  # d|chain a {\\n  # c\\n}\\n# d\\n",
        "chain a {\\nx\\n# c\\n>n\\n}|chain a {\\n  x\\n    # c\\n    > n\\n}\\n",
        "chain a {\\n>n\\nx\\n}|chain a {\\n  > n\\n  x\\n}\\n",
        "chain a { # c\\nx # d\\n... y\\n}|chain a {  # c\\n  x  # d\\n    ... y\\n}\\n",
      })
  void format_layout_isCanonical(String text, String expected) {
    check(unescaped(text), unescaped(expected));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "chain a {\\nbell  3   ;  kHz\\nbell  1k\\n}|chain a {\\n  bell  3   ;  kHz\\n  bell 1 kHz\\n}\\n",
        "chain a {\\n x  \"y\\n\\n\\n}|chain a {\\n  x  \"y\\n}\\n",
        "chain a  {\\nbell 1k\\n\\n# b\\nchain b {}|chain a  {\\n  bell 1 kHz\\n\\n# b\\nchain b { }\\n",
        "chain a {\\n  parallel {\\n    path\\n}\\n|chain a {\\n  parallel {\\n    path\\n}\\n",
      })
  void format_lineWithError_keepsItsCharacters(String text, String expected) {
    check(unescaped(text), unescaped(expected));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "chain a {\\n^|2",
        "chain a {\\n  parallel {\\n^\\n}|4",
        "chain a {\\n  bell 1 kHz\\n      ^\\n}|2",
        "chain a {\\n  x {\\n    y\\n    }^\\n}|2",
        "chain a {\\n  x {\\n    y\\n  }\\n  }^|0",
        "chain a {\\n  bell\\n^as bite\\n}|2",
        "chain a {\\n  bell\\n  > prose\\n^\\n}|2",
        "chain a {\\n}\\n  ^|0",
        "  ^|0",
        "chain a {\\n  bell\\n ^> prose\\n}|4",
      })
  void indentation_lineWithCaret_isThatOfItsPlace(String marked, int columns) {
    String text = unescaped(marked);
    int caret = text.indexOf('^');
    text = text.replace("^", "");
    List<TextEdit> edits = Formatting.indentation(SyntaxTree.parse(text), caret);
    String after = TextEdit.apply(text, edits);
    int lineStart = Math.max(text.lastIndexOf('\n', caret - 1) + 1, 0);
    int end = lineStart;
    while (end < after.length() && after.charAt(end) == ' ') {
      end++;
    }
    assertThat(end - lineStart).as(after).isEqualTo(columns);
    assertThat(after).isEqualToIgnoringWhitespace(text);
  }

  @Test
  void edits_oneLineInRange_leavesTheOthers() {
    String text = "chain a {\n bell 1k\n bell 12k\n}\n";
    SyntaxTree tree = SyntaxTree.parse(text);
    int second = text.indexOf("bell 12k");
    assertThat(
            TextEdit.apply(
                text, Formatting.edits(tree, new TextSpan(second, second), Spread.IN_TURN)))
        .isEqualTo("chain a {\n bell 1k\n  bell  12 kHz\n}\n");
  }

  @Test
  void edits_wrongIndentation_touchNothingElse() {
    assertThat(Formatting.edits(SyntaxTree.parse("chain a {\n bell\n}\n")))
        .containsExactly(new TextEdit(new TextSpan(11, 11), " "));
  }

  @Test
  void edits_rangeBehindTheText_throws() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> Formatting.edits(SyntaxTree.parse("bell"), new TextSpan(0, 5), Spread.IN_TURN))
        .withMessage("the offset must lie between 0 and 4, but was 5");
  }

  private static void check(String text, String expected) {
    SyntaxTree tree = SyntaxTree.parse(text);
    assertThat(Formatting.format(tree)).isEqualTo(expected);
    assertThat(TextEdit.apply(text, Formatting.edits(tree))).isEqualTo(expected);
    assertThat(Formatting.edits(SyntaxTree.parse(expected))).isEmpty();
  }

  private static String unescaped(String text) {
    return text.replace("\\n", "\n").replace("\\r", "\r");
  }
}
