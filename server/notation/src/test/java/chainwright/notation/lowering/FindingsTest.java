package chainwright.notation.lowering;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.Corpus;
import chainwright.notation.Mutations;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.model.Lowered;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.notation.text.TextSpan;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * What a section's reading says of any text at all. What it says of the corpus, the app's tests
 * hold.
 */
class FindingsTest {

  private static final int MUTATIONS = Integer.getInteger("fuzz.mutations", 20_000);
  private static final SectionReader READER = new SectionReader(Catalogue.load());

  @Test
  void read_mutations_neverThrowsAndStaysInside() {
    Mutations mutations = new Mutations(new Random(96_000), Corpus.texts());
    for (int i = 0; i < MUTATIONS; i++) {
      String text = mutations.next();
      SourceFile file = SourceFile.of("a.chain", SyntaxTree.parse(text), READER);
      for (Lowered section : file.sections()) {
        for (Finding finding : section.findings()) {
          TextSpan all = new TextSpan(0, finding.place().section().length());
          if (!all.contains(finding.place().span())) {
            assertThat(finding).as("lies inside <%s>", text).isNull();
          }
        }
      }
    }
  }

  /** Around a number beyond all measure there is no octave to be offered. */
  @Test
  void oneFrequencyForARange_beyondAllMeasure_offersNothing() {
    String text = "chain c {\n  de-ess band " + "9".repeat(400) + " Hz threshold -30 dBFS\n}\n";
    SourceFile file = SourceFile.of("a.chain", SyntaxTree.parse(text), READER);
    assertThat(file.sections().get(0).findings()).flatExtracting(Finding::fixes).isEmpty();
  }

  /** Between a frequency below 0 and one above it there is none to be offered. */
  @Test
  void rangeOfFrequencies_belowNought_offersItsEndsAlone() {
    String text = "chain c {\n  high-pass -100 to 200 Hz\n}\n";
    SourceFile file = SourceFile.of("a.chain", SyntaxTree.parse(text), READER);
    assertThat(file.sections().get(0).findings())
        .flatExtracting(Finding::fixes)
        .extracting(Fix::title)
        .containsExactly("Write `-100 Hz`", "Write `200 Hz`");
  }
}
