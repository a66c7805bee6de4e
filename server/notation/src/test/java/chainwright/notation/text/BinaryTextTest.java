package chainwright.notation.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class BinaryTextTest {

  @Test
  void text_withAFewStrayCharacters_isText() {
    checkText("");
    checkText("chain a { }\n");
    checkText("# page one\f\r\n\tchain a { }\n");
    checkText("\u001b\u001b\u001b");
    checkText("chain lead \"Strophe, Ufer, \u00dcbergang\" { }");
    checkText("\ufffd".repeat(5) + "x".repeat(96));
  }

  @Test
  void text_withAZeroOrManyControlCharacters_isBinary() {
    checkBinary("chain a\0 { }", 7, 8);
    checkBinary("\u0001\u0002\u0003\u0004", 0, 4);
    checkBinary("RIFF\ufffd\ufffdWAVE\u0010\u0001", 4, 6);
    checkBinary("\ufffd".repeat(5) + "x".repeat(95), 0, 5);
    checkBinary("\u0085\u0080x\u0081\u0090", 0, 2);
  }

  @Test
  void text_longAfterItsBeginning_isNotLookedAt() {
    checkText("x".repeat(8_000) + "\0");
    checkBinary("x".repeat(7_999) + "\0\0", 7_999, 8_001);
  }

  private static void checkText(String text) {
    assertThat(BinaryText.find(text)).isEmpty();
  }

  private static void checkBinary(String text, int start, int end) {
    assertThat(BinaryText.find(text)).isEqualTo(Optional.of(new TextSpan(start, end)));
  }
}
