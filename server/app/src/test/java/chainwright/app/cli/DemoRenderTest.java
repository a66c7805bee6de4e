package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The recordings of the demonstration have the faults that its chains mend, and are mended. */
class DemoRenderTest {

  private static final int RATE = 48_000;

  /** After the last word, when the notches have long settled: hum, rumble and a ringing guitar. */
  private static final Stretch END = new Stretch(15, 15.55);

  /** The first "s", and the vowel after it. */
  private static final Stretch ESS = new Stretch(0.87, 1.0);

  private static final Stretch VOWEL = new Stretch(1.1, 1.5);

  /** The word that jumps out, and the three words before it. */
  private static final Stretch LOUD_WORD = new Stretch(6.75, 7.45);

  private static final Stretch WORDS_BEFORE = new Stretch(3.4, 5.6);

  /** The first beat. */
  private static final Stretch BEAT = new Stretch(0.3, 1);

  @TempDir static Path folder;

  private record Stretch(double fromSeconds, double toSeconds) {

    double[] of(double[] sound) {
      return Arrays.copyOfRange(sound, (int) (fromSeconds * RATE), (int) (toSeconds * RATE));
    }
  }

  @BeforeAll
  static void writeDemo() {
    assertThat(CommandRun.of("demo", folder.resolve("demo")).code()).isZero();
  }

  @Test
  void lead_hum_isMuchLower() throws IOException {
    double[] take = take("lead");
    double[] mended = rendered("lead");
    for (double hertz : new double[] {50, 100, 150}) {
      double before = bandDb(END.of(take), hertz - 4, hertz + 4);
      double after = bandDb(END.of(mended), hertz - 4, hertz + 4);
      assertThat(before).as("%s Hz", hertz).isGreaterThan(-62);
      assertThat(before - after).as("%s Hz", hertz).isGreaterThan(10);
    }
  }

  @Test
  void lead_esses_areLowerAgainstTheirVowels() throws IOException {
    assertThat(essDb(take("lead")) - essDb(rendered("lead"))).isGreaterThan(2);
  }

  @Test
  void lead_wordThatJumpsOut_isNearerToTheOthers() throws IOException {
    assertThat(jumpDb(take("lead")) - jumpDb(rendered("lead"))).isGreaterThan(1);
  }

  @Test
  void guitarAndPiano_lowMids_buildUpLess() throws IOException {
    assertThat(lowMidDb(take("guitar")) - lowMidDb(rendered("guitar"))).isGreaterThan(0.5);
    assertThat(lowMidDb(take("piano")) - lowMidDb(rendered("piano"))).isGreaterThan(0.5);
  }

  private static double essDb(double[] sound) {
    return bandDb(ESS.of(sound), 5500, 9000) - bandDb(VOWEL.of(sound), 200, 4000);
  }

  private static double jumpDb(double[] sound) {
    return powerDb(LOUD_WORD.of(sound)) - powerDb(WORDS_BEFORE.of(sound));
  }

  private static double lowMidDb(double[] sound) {
    return bandDb(BEAT.of(sound), 160, 280) - bandDb(BEAT.of(sound), 280, 2000);
  }

  private static double[] take(String chain) throws IOException {
    return Takes.read(folder.resolve("demo/takes/" + chain + ".wav"))[0];
  }

  private static double[] rendered(String chain) throws IOException {
    Path out = folder.resolve(chain + ".wav");
    CommandRun run =
        CommandRun.of(
            "render",
            folder.resolve("demo/tin-roof-letters.chain"),
            "--chain",
            chain,
            "-o",
            out,
            "--force");
    assertThat(run.code()).as(run.err()).isZero();
    return Takes.read(out)[0];
  }

  private static double powerDb(double[] sound) {
    return 10 * Math.log10(Arrays.stream(sound).map(x -> x * x).average().orElse(0));
  }

  /** The power of a band, by the Goertzel recurrence on each bin of a Hann window [dB]. */
  private static double bandDb(double[] sound, double lowHz, double highHz) {
    int n = sound.length;
    double[] windowed = new double[n];
    for (int i = 0; i < n; i++) {
      windowed[i] = sound[i] * (1 - Math.cos(2 * Math.PI * i / n));
    }
    double power = 0;
    for (int bin = (int) Math.ceil(lowHz * n / RATE); bin <= highHz * n / RATE; bin++) {
      double feedback = 2 * Math.cos(2 * Math.PI * bin / n);
      double last = 0;
      double before = 0;
      for (double sample : windowed) {
        double now = sample + feedback * last - before;
        before = last;
        last = now;
      }
      power += last * last + before * before - feedback * last * before;
    }
    return 10 * Math.log10(2 * power / ((double) n * n) / 1.5);
  }
}
