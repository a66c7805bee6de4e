package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.SourceFile;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SigningTest {

  /** The caret stands at {@code |}; {@code ~} ends a line. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      nullValues = "-",
      value = {
        "chain a {~ high-pass |; cutoff Hz",
        "chain a {~ high-pass 66|; cutoff Hz",
        "chain a {~ high-pass 6|6 Hz 18 dB/oct~}; cutoff Hz",
        "chain a {~ high-pass 66 Hz|; cutoff Hz",
        "chain a {~ high-pass 66 Hz |; slope dB/oct",
        "chain a {~ high-pass 66 Hz 18 d|B/oct~}; slope dB/oct",
        "chain a {~ high-pass 66 Hz 18 dB/oct |~}; family",
        "chain a {~ high-pass 66 Hz 18 dB/oct Q |~}; Q",
        "chain a {~ compressor |~ gain 1 dB~}; threshold dBFS",
        "chain a {~ compressor threshold -2|; threshold dBFS",
        "chain a {~ compressor threshold -20 |; threshold dBFS",
        "chain a {~ compressor threshold -20 dBFS |; ratio n:1",
        "chain a {~ compressor threshold -20 dBFS attack |; attack ms",
        "chain a {~ compressor threshold -20 dBFS attack 5 ms |; release ms",
        "chain a {~ compressor threshold -20 dBFS attack 5| ms~}; attack ms",
        "chain a {~ compressor threshold -20 dBFS~   ... |; ratio n:1",
        "chain a {~ compressor threshold -20 dBFS~   ... attack |; attack ms",
        "chain a {~ gain -2 dB as |; -",
        "chain a {~ gain -2 dB deliberate |; -",
        "chain a {~ gain -2 dB # |; -",
        "chain a {~ source |; -",
        "chain a {~ |; -",
        "ch|; -",
        "chain a {~ de-ess band |; band from to Hz",
        "chain a {~ parallel {~  path \"x\" {~   bell 300 Hz |~  }~ }~}; gain dB",
        "preset p {~ bell 300 Hz -2 dB |~}; Q",
        "chain a {~ gate threshold -40 dBFS {~  side-chain {~   high-pass |~  }~ }~}; cutoff Hz",
        "chain a {~ multiband |; slope dB/oct",
      })
  void caret_onAStagesLine_isAtItsSetting(String marked, String setting) {
    Optional<Signature> found = at(marked);
    assertThat(
            found
                .map(
                    one ->
                        one.active().isPresent()
                            ? one.parameters().get(one.active().getAsInt())
                            : null)
                .map(one -> found.get().label().substring(one.start(), one.end()))
                .orElse(null))
        .isEqualTo(setting);
  }

  @Test
  void label_putsInBracketsWhatMayBeLeftOut() {
    assertThat(at("chain a {~ bell |").orElseThrow().label())
        .isEqualTo("bell  centre Hz  gain dB  [Q]  [curve]");
  }

  @Test
  void setting_isExplainedForTheDeclaredSource() {
    Signature signature = at("chain a {~ source lead-vocal~ compressor |").orElseThrow();
    assertThat(signature.parameters().stream().map(Signature.Parameter::says).toList().toString())
        .contains(
            "The time to reach 63 % of a sudden reduction. Default: 10 ms."
                + " Usual for lead vocal: 3 to 20 ms. Source: R. Izhaki, Mixing Audio (from memory), and",
            "One of: peak, rms, programme. Default: peak.");
  }

  @Test
  void gain_thatIsACut_hasTheRangesOfACut() {
    String cut = at("chain a {~ bell 300 Hz -2 dB |").orElseThrow().parameters().get(2).says();
    String boost = at("chain a {~ bell 300 Hz +2 dB |").orElseThrow().parameters().get(2).says();
    assertThat(cut).contains("Usual for a cut: 0.5 to 6.");
    assertThat(boost).contains("Usual for a boost: 0.3 to 2.");
  }

  /** Some editors look a setting up in the label by its text. */
  @Test
  void settingOfAnyStage_standsFirstInTheLabelWhereItIs() {
    for (StageKind kind : Catalogue.load().stages()) {
      at("chain a {~ " + kind.word() + " |")
          .ifPresent(
              one ->
                  one.parameters()
                      .forEach(
                          parameter -> {
                            String text = one.label().substring(parameter.start(), parameter.end());
                            assertThat(one.label().indexOf(text, kind.word().length()))
                                .as("%s in %s", text, one.label())
                                .isEqualTo(parameter.start());
                          }));
    }
  }

  private static Optional<Signature> at(String marked) {
    String text = marked.replace('~', '\n');
    int caret = text.indexOf('|');
    SourceFile file =
        SourceFile.of("a", text.replace("|", ""), new SectionReader(Catalogue.load()));
    int index = file.tree().sectionAt(caret);
    return Signing.at(
        Catalogue.load(), file.sections().get(index), caret - file.tree().startOf(index));
  }
}
