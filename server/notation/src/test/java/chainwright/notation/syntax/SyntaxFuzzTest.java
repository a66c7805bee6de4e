package chainwright.notation.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.Corpus;
import chainwright.notation.Mutations;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What holds for the tree of every text, tried on mutations and prefixes of the corpus. */
class SyntaxFuzzTest {

  private static final int MUTATIONS = Integer.getInteger("fuzz.mutations", 100_000);

  /** An edit sequence starts anew after so many steps, before the text has worn away. */
  private static final int STEPS = 25;

  @Test
  void parse_everyPrefix_givesItBack() {
    for (String text : Corpus.texts()) {
      SyntaxTree tree = SyntaxTree.parse("");
      for (int end = 0; end <= text.length(); end++) {
        tree = tree.withText(text.substring(0, end));
        check(tree, text.substring(0, end));
      }
    }
  }

  @Test
  void withText_afterRandomEdits_isTheTreeFromScratch() {
    Mutations mutations = new Mutations(new Random(48_000), Corpus.texts());
    SyntaxTree tree = SyntaxTree.parse("");
    for (int i = 0; i < MUTATIONS; i++) {
      String text = i % STEPS == 0 ? mutations.next() : mutations.mutate(tree.text());
      tree = tree.withText(text);
      check(tree, text);
      checkSame(tree, SyntaxTree.parse(text));
    }
  }

  private static void check(SyntaxTree tree, String text) {
    StringBuilder whole = new StringBuilder(text.length());
    for (int i = 0; i < tree.sections().size(); i++) {
      Section section = tree.sections().get(i);
      if (tree.startOf(i) != whole.length()) {
        assertThat(tree.startOf(i)).as("section %d of <%s>", i, text).isEqualTo(whole.length());
      }
      section.root().appendText(whole);
      section.troubles().forEach(trouble -> checkInside(trouble, section));
    }
    if (!text.contentEquals(whole)) {
      assertThat(whole).hasToString(text);
    }
  }

  private static void checkInside(Section.Trouble trouble, Section section) {
    TextSpan all = new TextSpan(0, section.length());
    if (!all.contains(trouble.span())
        || !trouble.mend().stream().map(TextEdit::span).allMatch(all::contains)) {
      assertThat(trouble).as("lies inside <%s>", section.text()).isNull();
    }
  }

  private static void checkSame(SyntaxTree tree, SyntaxTree scratch) {
    assertThat(tree.sections()).hasSameSizeAs(scratch.sections());
    for (int i = 0; i < scratch.sections().size(); i++) {
      Section section = tree.sections().get(i);
      Section expected = scratch.sections().get(i);
      if (!section.root().equals(expected.root())
          || !section.troubles().equals(expected.troubles())) {
        assertThat(section.root()).as("tree of <%s>", tree.text()).isEqualTo(expected.root());
        assertThat(section.troubles()).isEqualTo(expected.troubles());
      }
    }
  }
}
