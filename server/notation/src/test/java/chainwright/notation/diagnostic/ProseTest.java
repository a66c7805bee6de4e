package chainwright.notation.diagnostic;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProseTest {

  @ParameterizedTest
  @CsvSource({
    "a cut of -3 dB, a cut of \u22123 dB",
    "from -6 dB to +4 dB, from \u22126 dB to +4 dB",
    "Write `gain -3 dB`, Write `gain -3 dB`",
    "`gain` -3 dB and `-4 dB`, `gain` \u22123 dB and `-4 dB`",
    "two 12-string guitars, two 12-string guitars",
    "EBU R 68-2000, EBU R 68-2000",
    "BS.1770-5, BS.1770-5"
  })
  void sentence_hasMinusSigns_whereNothingIsToBeTyped(String sentence, String set) {
    assertThat(Prose.set(sentence)).isEqualTo(set);
  }
}
