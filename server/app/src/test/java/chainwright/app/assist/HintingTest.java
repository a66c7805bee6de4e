package chainwright.app.assist;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import chainwright.notation.text.TextSpan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The remarks stand between angles in the text that they are shown in; {@code ~} ends a line. */
class HintingTest {

  private static final Path EXAMPLES = Path.of("../../grammar/examples");
  private static final Set<Hint.Kind> ALL = Set.of(Hint.Kind.values());

  /** Common practice, no source: what is worth saying of what is not written. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "chain a { high-pass 66 Hz<12 dB/oct> }",
        "chain a { high-pass 66 Hz 18 dB/oct }",
        "chain a { low-pass 8 kHz linkwitz-riley<12 dB/oct> }",
        "chain a { bell 300 Hz -2 dB<Q 1> as mud }",
        "chain a { compressor threshold -20 dBFS<ratio 3:1  knee 6 dB  attack 10 ms  release 150 ms> }",
        "chain a { compressor threshold -20 dBFS ratio 2:1 attack 5 ms release 90 ms knee 3 dB }",
        "chain a { compressor threshold -20 dBFS ratio 2:1 attack 5 ms release 90 ms knee 3 dB"
            + " detector rms<rms-window 20 ms> }",
        "chain a { compressor threshold -20 dBFS ratio 2:1 knee 3 dB attack 5 ms"
            + " detector programme<rms-window 20 ms  fast 60 ms  slow 1.5 s  split 55 %> }",
        "chain a { dynamic-bell 3 kHz threshold -30 dBFS<Q 1.5  ratio 3:1  max-cut 4 dB  attack 10 ms …> }",
        "chain a { saturation tape drive 4 dB thd-at-alignment 1 %"
            + "<treble-saturation 8 kHz  head-bump +0.5 dB> }",
        "chain a { pan -40 % }",
        "chain a { gain -2 dB }",
        "chain a { width mono-below 120 Hz<6 dB/oct> }",
        "chain a { high-pass 66 Hz bypassed }",
        "chain a { high-pass 66 }",
        "chain a { gate threshold -40 dBFS range 9 dB attack 1 ms hold 50 ms release 90 ms"
            + " hysteresis 3 dB look-ahead 1 ms { side-chain { high-pass 60 Hz<12 dB/oct> } } }",
        "preset p { bell 300 Hz -2 dB<Q 1> }~chain a { apply p }",
      })
  void valueByOmission_isNamedWhereItChangesTheSound(String marked) {
    check(marked, Set.of(Hint.Kind.OMITTED));
  }

  /** Source: ISO 16:1975 (A4 = 440 Hz), equal temperament: C2 is 65.406 Hz, E2 82.407 Hz. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "chain a { high-pass 66 Hz<≈ C2 +16 ct> 18 dB/oct }",
        "chain a { bell 440 Hz<= A4> -2 dB Q 2 }",
        "chain a { bell 185 Hz<= Gb3> -2 dB Q 2 }",
        "chain a { bell 82 Hz<≈ E2 −9 ct> -2 dB Q 2 }",
        "chain a { lowest-note 82 Hz<≈ E2 −9 ct> }",
        "chain a { lowest-note E2 }",
        "chain a { high-pass 20 Hz }",
        "chain a { high-shelf 10 kHz 1 dB }",
        "chain a { source lead-vocal~ bell 1.2 kHz -2 dB Q 2 }",
        "chain a { de-ess band 500 to 900 Hz threshold -32 dBFS }",
        "chain a { compressor threshold -20 dBFS attack 66 ms }",
      })
  void frequency_ofAPlayableNote_isNamed(String marked) {
    check(marked, Set.of(Hint.Kind.NOTES));
  }

  /**
   * Source: Audio EQ Cookbook, 1/Q = 2 sinh(ln(2)/2 N): one octave is Q 1.4142, two are Q 0.6667.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "chain a { bell 1 kHz -2 dB Q 1.4142<≈ 1 oct> }",
        "chain a { bell 1 kHz -2 dB Q 0.6667<≈ 2 oct> }",
        "chain a { band-pass 1 kHz Q 1<≈ 1.39 oct> }",
        "chain a { notch 1 kHz Q 30<≈ 0.048 oct> }",
        "chain a { dynamic-bell 3 kHz Q 2<≈ 0.71 oct> threshold -30 dBFS }",
        "chain a { high-shelf 8 kHz 2 dB Q 0.6 }",
        "chain a { bell 1 kHz -2 dB }",
      })
  void qualityFactor_ofABand_isSaidInOctaves(String marked) {
    check(marked, Set.of(Hint.Kind.OCTAVES));
  }

  /**
   * Source: two equal Butterworth filters of second order are half as strong where {@code (fc/f)^4
   * = sqrt(2) - 1}, at 1.2465 fc, and a resonance of Q 1 where {@code (f/fc)^2 = (sqrt(5) - 1) /
   * 2}, at 0.7862 fc; both computed by hand from their squared magnitudes.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "chain a { high-pass 100 Hz 24 dB/oct }",
        "chain a { high-pass 100 Hz 24 dB/oct linkwitz-riley<−3 dB at 125 Hz> }",
        "chain a { low-pass 100 Hz 24 dB/oct linkwitz-riley curve bilinear<−3 dB at 80.2 Hz> }",
        "chain a { high-pass 100 Hz 12 dB/oct Q 1<−3 dB at 78.6 Hz> }",
        "chain a { high-pass 100 Hz bessel 24 dB/oct }",
        "chain a { high-pass 80 Hz~ bell 1 kHz -2 dB~ high-pass 80 Hz<together −3 dB at 99.7 Hz> }",
        "preset p { high-pass 80 Hz }~chain a { apply p~ high-pass 80 Hz<together −3 dB at 99.7 Hz> }",
        "chain a { high-pass 80 Hz bypassed~ high-pass 80 Hz }",
        "chain a { high-pass 80 Hz~ low-pass 8 kHz }",
        "chain a { high-pass 20 Hz~ high-pass 200 Hz 24 dB/oct }",
        "chain a {~ parallel {~  path \"x\" { high-pass 80 Hz }~  path \"y\" { high-pass 80 Hz }~ }~}",
      })
  void corner_thatIsNotWhereItIsWritten_isSaid(String marked) {
    check(marked, Set.of(Hint.Kind.CORNERS));
  }

  @Test
  void hint_ofAnyExample_isShortExplainedAndInsideTheRange() throws IOException {
    int told = 0;
    try (Stream<Path> paths = Files.list(EXAMPLES)) {
      for (Path path : paths.filter(one -> one.toString().endsWith(".chain")).toList()) {
        SourceFile file = read(Files.readString(path));
        int length = file.tree().text().length();
        for (Hint hint : hints(file, ALL, new TextSpan(0, length))) {
          assertThat(hint.label()).isNotBlank().hasSizeLessThan(90);
          assertThat(hint.tooltip()).isNotBlank();
          TextSpan here = new TextSpan(hint.offset(), hint.offset());
          assertThat(hints(file, ALL, here)).contains(hint);
          told++;
        }
      }
    }
    assertThat(told).isPositive();
  }

  /** What a remark offers to write says what held before: the remark goes, and nothing is wrong. */
  @Test
  void insertion_ofAnOmittedValue_isWhatHeld() throws IOException {
    try (Stream<Path> paths = Files.list(EXAMPLES)) {
      for (Path path : paths.filter(one -> one.toString().endsWith(".chain")).toList()) {
        String text = Files.readString(path);
        SourceFile file = read(text);
        StringBuilder written = new StringBuilder(text);
        List<Hint> hints =
            hints(file, Set.of(Hint.Kind.OMITTED), new TextSpan(0, text.length())).stream()
                .sorted(Comparator.comparingInt(Hint::offset).reversed())
                .toList();
        hints.forEach(hint -> written.insert(hint.offset(), hint.insertion()));
        SourceFile after = read(written.toString());
        assertThat(hints(after, Set.of(Hint.Kind.OMITTED), new TextSpan(0, written.length())))
            .as("%s", path)
            .isEmpty();
        assertThat(faults(after)).as("%s", path).isEqualTo(faults(file));
      }
    }
  }

  @Test
  void tooltip_namesItsSource() {
    SourceFile file = read("chain a { source lead-vocal~ compressor threshold -20 dBFS }");
    Hint hint =
        hints(file, Set.of(Hint.Kind.OMITTED), new TextSpan(0, file.tree().text().length())).get(0);
    assertThat(hint.tooltip())
        .contains(
            "`attack` 10 ms",
            "Usual for lead vocal: 3 to 20 ms (R. Izhaki, Mixing Audio (from memory), and 2 more:");
    assertThat(hint.insertion()).isEqualTo("  ratio 3:1  knee 6 dB  attack 10 ms  release 150 ms");
  }

  private static long faults(SourceFile file) {
    return file.sections().stream().mapToLong(section -> section.findings().size()).sum();
  }

  private static void check(String marked, Set<Hint.Kind> wanted) {
    SourceFile file = read(marked.replaceAll("<[^>]*>", ""));
    StringBuilder shown = new StringBuilder(file.tree().text());
    List<Hint> hints = hints(file, wanted, new TextSpan(0, shown.length()));
    for (int i = hints.size() - 1; i >= 0; i--) {
      shown.insert(hints.get(i).offset(), "<" + hints.get(i).label() + ">");
    }
    assertThat(shown.toString()).isEqualTo(marked.replace('~', '\n'));
  }

  private static List<Hint> hints(SourceFile file, Set<Hint.Kind> wanted, TextSpan range) {
    return new Hinting(new Project(List.of(file)).scope(file.key()), wanted).in(file, range);
  }

  private static SourceFile read(String text) {
    return SourceFile.of("a", text.replace('~', '\n'), new SectionReader(Catalogue.load()));
  }
}
