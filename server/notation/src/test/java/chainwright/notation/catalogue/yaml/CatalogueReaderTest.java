package chainwright.notation.catalogue.yaml;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.CatalogueEncoder;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.TradeRange;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CatalogueReaderTest {

  private static final Path FOLDER = Path.of("src/main/catalogue");

  private static final Map<String, String> SMALL =
      Map.of(
          "citations.yaml",
          "citations: {CP: {citation: 'common practice, no source', known: none}}",
          "sources.yaml",
          "sources: [{word: bass, title: Bass, lowest-hz: 41.2, lowest-note: E1, highest-hz: 392,"
              + " about: four strings, crest: [8, 16], spill: none, zones: {sub: [25, 60]},"
              + " source: [CP]}]",
          "stages/notch.yaml",
          """
          stage: notch
          title: Notch
          family: filter
          order: 28
          says: Takes a line away.
          overdone: Hollow.
          place: Early.
          settings:
            - name: centre
              takes: Hz
              positional: true
              required: true
              says: The line.
              hard: [1, 0.499 rate]
              ranges:
                - {for: [bass], cautious: [60, 300], usual: [40, 500], default: 100, source: [CP]}
                - {for: any, cautious: [80, 8000], usual: [40, 12000], above: 16000, source: [CP]}
            - name: slope
              takes: dB/oct
              positional: true
              says: How steep.
              hard: [6, 48]
              default: 12
              offers: [6, 12]
              unranged: Nobody says.
            - name: curve
              takes: words
              words: [analogue, bilinear]
              says: Which curve.
              default: analogue
          """);

  @Test
  void read_ownFiles_equalsWhatTheProgramCarries() throws IOException {
    Catalogue read = CatalogueReader.read(CatalogueCompiler.texts(FOLDER));
    Catalogue shipped = Catalogue.load();
    assertThat(shipped.stages()).isEqualTo(read.stages()).hasSizeGreaterThan(40);
    assertThat(shipped.sources()).isEqualTo(read.sources());
    assertThat(shipped.citations()).isEqualTo(read.citations());
    assertThat(CatalogueEncoder.encode(shipped)).isEqualTo(CatalogueEncoder.encode(read));
  }

  @Test
  void range_everySettingAndSource_isFoundOrSaysWhyNot() throws IOException {
    Catalogue read = CatalogueReader.read(CatalogueCompiler.texts(FOLDER));
    for (StageKind stage : read.stages()) {
      for (Setting setting : stage.settings()) {
        for (var source : read.sources()) {
          assertThat(setting.range(Optional.of(source), RangeRow.Direction.ANY).isPresent())
              .as("%s %s for %s", stage.word(), setting.name(), source.word())
              .isEqualTo(!setting.rows().isEmpty());
        }
      }
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # stage    | setting    | source          | value | verdict
          high-pass  | cutoff     | lead-vocal      | 66    | USUAL
          high-pass  | cutoff     | lead-vocal      | 130   | UNCOMMON
          high-pass  | cutoff     | lead-vocal      | 160   | EXTREME
          compressor | ratio      | mix-bus         | 4     | EXTREME
          compressor | ratio      | vocal-group     | 6     | UNCOMMON
          compressor | ratio      | toms            | 6     | USUAL
          gate       | range      | kick            | 20    | USUAL
          """)
  void verdict_tradeValue_isAsInTheFile(
      String stage, String setting, String source, double value, TradeRange.Verdict verdict) {
    Catalogue catalogue = Catalogue.load();
    TradeRange range =
        catalogue
            .stage(stage)
            .flatMap(kind -> kind.setting(setting))
            .flatMap(one -> one.range(catalogue.source(source), RangeRow.Direction.ANY))
            .orElseThrow();
    assertThat(range.verdict(value)).isEqualTo(verdict);
  }

  @Test
  void read_smallCatalogue_isAccepted() {
    assertThat(CatalogueReader.read(SMALL).stage("notch")).isPresent();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          family: filter    | family: magic      | family: there is no family `magic`
          order: 28         | order: 2.5         | order: must be a whole number, but was 2.5
          overdone: Hollow. | tooMuch: Hollow.   | there is no key `tooMuch` here
          title: Notch      | 'title: '          | title: a text is needed, but was null
          stage: notch      | stage: dip         | stage: the file must be called dip.yaml
          stage: notch      | stage: Notch       | stage: a word must be written in kebab-case, but was `Notch`
          takes: Hz         | takes: hertz       | settings[0].takes: there is no unit `hertz`
          name: slope       | name: centre       | settings[1]: the name `centre` is taken
          takes: dB/oct     | takes: kHz         | `slope` cannot be told from another positional setting: a frequency in Hz or kHz
          'hard: [1, 0.499' | 'hard: [1, 0.7'    | settings[0].hard[1]: more than half the sample rate means nothing, but was 0.7
          0.499 rate        | span               | `centre`: its limit names no setting: span
          'hard: [6, 48]'   | 'hard: [48, 96]'   | settings[1].offers[0]: lies outside `hard`: 6.0
          default: 12       | default: 18        | settings[1].default: is not one of the values in `offers`: 18.0
          default: analogue | default: digital   | settings[2].default: `digital` is none of the words
          unranged: Nobody says. | span: false   | settings[1]: `ranges` are missing and no `unranged` says why
          'usual: [40, 500]' | 'usual: [500, 40]' | settings[0].ranges[0].usual: the smaller number must stand first, but was [500.0, 40.0]
          'usual: [40, 500]' | 'usual: [0.5, 500]' | settings[0].ranges[0].usual: [0.5, 500.0] does not lie between 1.0 and Infinity
          'usual: [40, 500]' | 'usual: [400, 500]' | settings[0].ranges[0].cautious: has nothing in common with `usual`
          above: 16000      | above: 9000        | settings[0].ranges[1].usual: [40.0, 12000.0] does not lie between 1.0 and 9000.0
          default: 100      | default: 900       | settings[0].ranges[0].default: is neither cautious nor usual: 900.0
          'for: [bass]'     | 'for: [tuba]'      | settings[0].ranges[0].for[0]: there is no source kind `tuba`
          'for: [bass]'     | for: any           | settings[0].ranges[1]: `any` has a row already
          for: any          | 'for: any, when: cut' | settings[0].ranges: a row for any source is needed for cut and for boost
          'source: [CP]}'   | 'source: [XY]}'    | settings[0].ranges[0].source[0]: no citation has the key `XY`
          'takes: words'    | 'takes: name'      | settings[2]: `words` and `takes: words` belong together
          required: true    | 'required: maybe'  | settings[0].required: true or false is needed, but was maybe
          says: Which curve. | 'name: other'     | line 29: not YAML: found duplicate key name
          """)
  void read_plantedFault_saysFilePathAndReason(String good, String bad, String message) {
    Map<String, String> files = new HashMap<>(SMALL);
    files.computeIfPresent(
        "stages/notch.yaml",
        (file, text) -> {
          assertThat(text).contains(good);
          return text.replace(good, bad);
        });
    assertThatThrownBy(() -> CatalogueReader.read(files))
        .isInstanceOf(CatalogueException.class)
        .hasMessage("stages/notch.yaml: " + message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          citations.yaml | known: none   | known: heard        | citations.yaml: citations.CP.known: must be opened, memory, computed or none
          sources.yaml   | title: Bass   | 'title: Bass, like: cello' | sources.yaml: bass: `like` names no other source kind: cello
          sources.yaml   | 41.2          | 412                 | sources.yaml: sources[0].lowest-hz: must lie between 0 and highest-hz, but was 412.0
          sources.yaml   | '[25, 60]'    | '[60, 60]'          | sources.yaml: sources[0].zones.sub: a zone must go from 0 Hz or more to a higher frequency
          """)
  void read_plantedFaultInLists_saysFilePathAndReason(
      String file, String good, String bad, String message) {
    Map<String, String> files = new HashMap<>(SMALL);
    files.computeIfPresent(file, (name, text) -> text.replace(good, bad));
    assertThatThrownBy(() -> CatalogueReader.read(files)).hasMessage(message);
  }

  @Test
  void read_missingFile_saysWhich() {
    assertThatThrownBy(() -> CatalogueReader.read(Map.of()))
        .hasMessage("citations.yaml: the file is missing");
  }
}
