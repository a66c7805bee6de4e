package chainwright.app.lsp;

import chainwright.app.workspace.DocumentSnapshot;
import chainwright.app.workspace.Documents;
import chainwright.app.workspace.Judgements;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.syntax.Spread;
import com.google.gson.JsonNull;

/**
 * Judges a text of its own while the editor and the server greet each other, so that Java has met
 * what the first document will need. On two processors this takes some 30 ms off a start.
 */
final class Rehearsal {

  /** What many chains have, and a slip or two. */
  private static final String TEXT =
      """
      session "Rehearsal" {
        sample-rate 48 kHz
      }

      chain voice "Voice" {
        source  lead-vocal
        to      mix  fader -3 dB

        high-pass   80 Hz  12 dB/oct
        bell        3.1 kHz  -2.5 dB  Q 2.2
          > The held vowel.
        de-ess      band 5.5 to 9 kHz  threshold -30 dBFS  max-reduction 6 dB
        compressor  threshold -21 dBFS  ratio 3:1  attack 12 ms  release 90 ms  knee 6 dB
        high-shelf  11.5 kHz  +2 dB  # Air.
        bell        300  -2 dB;
      }

      bus mix {
      }
      """;

  private Rehearsal() {}

  static void play(Catalogue catalogue) {
    Documents documents = new Documents(new SectionReader(catalogue));
    DocumentSnapshot document = documents.open("rehearsal:", 1, TEXT);
    Request request =
        new Request(
            document,
            documents.workspace(),
            ClientTraits.of(new Announced(JsonNull.INSTANCE)),
            ClientSettings.DEFAULTS,
            new Judgements(catalogue, Spread.IN_TURN),
            Spread.IN_TURN,
            () -> {});
    FoundDiagnostics.of(request).forEach(DiagnosticJson::of);
  }
}
