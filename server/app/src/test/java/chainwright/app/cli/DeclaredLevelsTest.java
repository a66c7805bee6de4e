package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a render says of the declared loudness and true peak.
 *
 * <p>The take is a tone of 997 Hz in one channel with a peak of -20 dBFS, a whole number of its
 * periods in each second. Its loudness is -23.01 LUFS (ITU-R BS.1770: a full-scale tone of 997 Hz
 * in one channel reads -3.01 LKFS), its true peak -20 dBTP but for its sudden ends, which ring a
 * little between the samples.
 */
class DeclaredLevelsTest {

  private static final int RATE = 48_000;

  private static final String LOUDNESS_MISSED = "than the declared `loudness";

  private static final String PEAK_MISSED = "over the declared `max-true-peak";

  @TempDir Path folder;

  @BeforeEach
  void writeTake() throws IOException {
    double[] tone = new double[2 * RATE];
    for (int i = 0; i < tone.length; i++) {
      tone[i] = 0.1 * Math.sin(2 * Math.PI * 997 * i / RATE);
    }
    Takes.write(folder.resolve("tone.wav"), RATE, tone);
    Takes.write(folder.resolve("silence.wav"), RATE, new double[RATE]);
    Takes.write(folder.resolve("click.wav"), RATE, new double[] {0, 0.1, 0});
  }

  private CommandRun render(int code, String text, Object... more) throws IOException {
    Path out = folder.resolve("out.wav");
    Files.deleteIfExists(out);
    CommandRun run = new SessionRuns(folder, out).render(code, text, more);
    assertThat(out).exists();
    return run;
  }

  private static String chain(String lines) {
    return "chain c {\n  take \"tone.wav\"\n  " + lines + "\n}\n";
  }

  @Test
  void loudness_moreThanHalfALuOff_isSaidAndEndsWithOne() throws IOException {
    assertThat(render(1, chain("loudness -14 LUFS")).err())
        .contains("the file is 9.0 LU softer than the declared `loudness -14 LUFS`");
    assertThat(render(1, chain("loudness -23 LUFS\n  gain +0.6 dB")).err())
        .contains("the file is 0.6 LU louder than the declared `loudness -23 LUFS`");
    assertThat(render(0, chain("loudness -23 LUFS\n  gain +0.4 dB")).err()).isEmpty();
    assertThat(render(0, chain("loudness -23 LUFS\n  gain -0.4 dB")).err()).isEmpty();
  }

  @Test
  void truePeak_anyExcess_isSaidAndEndsWithOne() throws IOException {
    assertThat(render(1, chain("max-true-peak -30 dBTP")).err())
        .containsPattern(
            "the true peak lies 10\\.0[0-2] dB over the declared `max-true-peak -30 dBTP`");
    assertThat(render(1, chain("max-true-peak -20.1 dBTP")).err())
        .containsPattern("lies 0\\.1[0-2] dB over");
    assertThat(render(0, chain("max-true-peak -19.9 dBTP")).err()).isEmpty();
  }

  @Test
  void session_bothMissed_saysEachInALine() throws IOException {
    String session =
        """
        chain voice {
          take "tone.wav"
          to mix
        }
        bus mix {
          loudness -14 LUFS
          max-true-peak -30 dBTP
        }
        """;
    assertThat(render(1, session).err().lines())
        .hasSize(2)
        .anyMatch(line -> line.contains(LOUDNESS_MISSED))
        .anyMatch(line -> line.contains(PEAK_MISSED));
    assertThat(render(1, session, "--chain", "mix").err()).contains(LOUDNESS_MISSED, PEAK_MISSED);
    assertThat(render(0, session, "--chain", "voice").err()).isEmpty();
  }

  @Test
  void partsAndMatchedLevels_areHeldAgainstTheTruePeakOnly() throws IOException {
    String text = chain("loudness -14 LUFS\n  max-true-peak -30 dBTP\n  gain 0 dB");
    for (Object[] more :
        new Object[][] {{"--from", "0:00.5"}, {"--to", "0:01.5"}, {"--level-match"}}) {
      assertThat(render(1, text, more).err()).contains(PEAK_MISSED).doesNotContain(LOUDNESS_MISSED);
    }
    assertThat(render(0, text, "--without", "1").err()).isEmpty();
  }

  @Test
  void loudness_ofNoSound_cannotBeHeldAgainstIt() throws IOException {
    String text = chain("loudness -14 LUFS");
    assertThat(render(1, text.replace("tone", "silence")).err()).contains("too quiet to have");
    assertThat(render(1, text.replace("tone", "click")).err()).contains("too short to have");
  }
}
