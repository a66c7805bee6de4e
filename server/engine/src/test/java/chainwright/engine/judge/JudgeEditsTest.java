package chainwright.engine.judge;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.Spread;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What an editor shows after any row of edits is what a fresh look at the texts would show. */
class JudgeEditsTest {

  private static final Catalogue CATALOGUE = Catalogue.load();
  private static final int EDITS = 120;
  private static final String SESSION = "/songs/session.chain";
  private static final String HOUSE = "/songs/house.chain";

  /** The last first, as another thread might come by. */
  private static final Spread BACKWARDS =
      new Spread() {
        @Override
        public <A, B> List<B> map(List<A> items, Function<? super A, ? extends B> work) {
          List<A> reversed = new ArrayList<>(items);
          Collections.reverse(reversed);
          List<B> results = Spread.IN_TURN.map(reversed, work);
          Collections.reverse(results);
          return results;
        }
      };

  private static final String SESSION_TEXT =
      """
      import "house.chain"
      session "Evening" {
        sample-rate 48 kHz
        alignment 0 dBu = -18 dBFS
      }
      chain lead {
        source  lead-vocal
        to      vocals  fader -3 dB
        send    plate  -14 dB post-fader
        apply   guard
        high-pass  80 Hz  36 dB/oct
        de-ess  band 5500 to 9000 Hz  threshold -30 dBFS  max-reduction 6 dB
        compressor  threshold -21 dBFS  ratio 3:1  attack 2 ms  release 20 ms
        bell  300 Hz  -4 dB  Q 1
        high-shelf  6 kHz  +5 dB
      }
      chain twin {
        source  lead-vocal
        to      vocals
        apply   warm  deliberate stacked-high-passes "both are gentle"
        bell  16 kHz  +4 dB  Q 2
      }
      bus vocals {
        to   mix
        high-pass  90 Hz  12 dB/oct
        low-shelf  400 Hz  +4 dB
      }
      bus plate {
        to   mix
        reverb  decay 1.5 s
      }
      bus mix {
        compressor  threshold -18 dBFS  ratio 2:1  attack 30 ms  release 200 ms
        limiter  threshold -1 dBFS
      }
      """;

  private static final String HOUSE_TEXT =
      """
      preset guard {
        high-pass  60 Hz  18 dB/oct
      }
      preset warm {
        apply  guard
        bell  200 Hz  +6 dB  Q 5
      }
      bus mix {
        high-pass  25 Hz  12 dB/oct
      }
      """;

  /** What one edit may put in place of what: numbers, names, words that open a section. */
  private static final List<List<String>> SWAPS =
      List.of(
          List.of("18 dB/oct", "36 dB/oct", "12 dB/oct"),
          List.of("+4 dB", "-4 dB", "+12 dB"),
          List.of("to      vocals", "to      mix", "to      nowhere", "to      plate"),
          List.of("to   mix", "to   vocals", "send mix -3 dB"),
          List.of("apply   guard", "apply   warm", "apply   missing"),
          List.of("preset guard", "preset warm", "preset late"),
          List.of("apply  guard", "apply  warm"),
          List.of("bus mix", "bus vocals", "chain mix"),
          List.of("chain twin", "chain lead", "# chain twin"),
          List.of("post-fader", "pre-fader"),
          List.of("48 kHz", "44.1 kHz", "96 kHz"),
          List.of("import \"house.chain\"", "import \"none.chain\"", "# no import"),
          List.of("lead-vocal", "kick", "bass"),
          List.of("fader -3 dB", "fader +6 dB"),
          List.of("attack 2 ms", "attack 40 ms"),
          List.of("-14 dB", "0 dB"),
          List.of("}\n", "\n"));

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void findings_afterAnyEdits_areThoseOfAFreshLook(long seed) {
    Random random = new Random(seed);
    SectionReader reader = new SectionReader(CATALOGUE, BACKWARDS);
    Judge keeping = new Judge(CATALOGUE, BACKWARDS);
    Judge fresh = new Judge(CATALOGUE);
    SourceFile session = SourceFile.of(SESSION, SESSION_TEXT, reader);
    SourceFile house = SourceFile.of(HOUSE, HOUSE_TEXT, reader);
    Judgement last = Judgement.NONE;
    for (int edit = 0; edit < EDITS; edit++) {
      if (random.nextInt(3) == 0) {
        house = edited(house, HOUSE_TEXT, random);
      } else {
        session = edited(session, SESSION_TEXT, random);
      }
      Project project = new Project(List.of(session, house));
      last = keeping.judge(project, SESSION, last);
      assertThat(last.findings())
          .as("edit %d of seed %d:%n%s%n%s", edit, seed, session.tree().text(), house.tree().text())
          .isEqualTo(fresh.judge(project, SESSION, Judgement.NONE).findings());
    }
  }

  private static SourceFile edited(SourceFile file, String original, Random random) {
    String text = file.tree().text();
    String after =
        switch (random.nextInt(12)) {
          case 0 -> original;
          case 1 -> withoutALine(text, random);
          default -> swapped(text, random);
        };
    return file.withTree(file.tree().withText(after));
  }

  private static String withoutALine(String text, Random random) {
    List<String> lines = new ArrayList<>(Arrays.asList(text.split("\n", -1)));
    lines.remove(random.nextInt(lines.size()));
    return String.join("\n", lines);
  }

  private static String swapped(String text, Random random) {
    List<String> swap = SWAPS.get(random.nextInt(SWAPS.size()));
    String from = swap.get(random.nextInt(swap.size()));
    String to = swap.get(random.nextInt(swap.size()));
    List<Integer> places = new ArrayList<>();
    for (int at = text.indexOf(from); at >= 0; at = text.indexOf(from, at + 1)) {
      places.add(at);
    }
    if (places.isEmpty()) {
      return text;
    }
    int at = places.get(random.nextInt(places.size()));
    return text.substring(0, at) + to + text.substring(at + from.length());
  }
}
