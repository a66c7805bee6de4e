package chainwright.notation.format;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.Corpus;
import chainwright.notation.Mutations;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.TextEdit;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What holds for every text, tried on mutations of the corpus. */
class FormattingFuzzTest {

  private static final int MUTATIONS = Integer.getInteger("fuzz.mutations", 100_000);

  @Test
  void format_corpus_keepsMeaningAndIsIdempotent() {
    Corpus.texts().forEach(FormattingFuzzTest::check);
  }

  @Test
  void format_mutations_keepMeaningAndAreIdempotent() {
    Mutations mutations = new Mutations(new Random(20261125), Corpus.texts());
    for (int i = 0; i < MUTATIONS; i++) {
      check(mutations.next());
    }
  }

  private static void check(String text) {
    SyntaxTree tree = SyntaxTree.parse(text);
    String formatted = Formatting.format(tree);
    SyntaxTree after = SyntaxTree.parse(formatted);
    List<TextEdit> edits = Formatting.edits(tree);
    if (!Meaning.of(after).equals(Meaning.of(tree))) {
      assertThat(Meaning.of(after)).as("meaning of <%s>", text).isEqualTo(Meaning.of(tree));
    }
    if (!TextEdit.apply(text, edits).equals(formatted)) {
      assertThat(TextEdit.apply(text, edits)).as("edits of <%s>", text).isEqualTo(formatted);
    }
    String again = Formatting.format(after);
    if (!again.equals(formatted)) {
      assertThat(again).as("twice formatted <%s>", text).isEqualTo(formatted);
    }
  }
}
