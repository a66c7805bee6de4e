package chainwright.notation.lowering;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import org.junit.jupiter.api.Test;

class TradeWordsTest {

  private static final Catalogue CATALOGUE = Catalogue.load();

  @Test
  void tradeWord_eachOfThem_isWrittenAsWordsOfTheNotation() {
    for (String word : TradeWords.all()) {
      assertThat(TradeWords.writtenFor(word)).as(word).isNotEmpty().allMatch(this::isKnown);
      assertThat(TradeWords.writtenFor(word)).as(word).doesNotHaveDuplicates();
    }
  }

  @Test
  void tradeWord_eachOfThem_isNoWordOfTheNotationItself() {
    assertThat(TradeWords.all()).noneMatch(this::isKnown);
  }

  @Test
  void tradeWord_inAnyLetterCase_isKnown() {
    assertThat(TradeWords.writtenFor("HPF")).containsExactly("high-pass");
  }

  private boolean isKnown(String word) {
    return CATALOGUE.stage(word).isPresent() || Vocabulary.find(word).isPresent();
  }
}
