package chainwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a render or a measurement reserves in memory does not grow with the length of the take. */
class LongRenderTest {

  private static final int RATE = 8_000;
  private static final int SHORT_SECONDS = 5;
  private static final int LONG_SECONDS = 125;

  /** A tenth of what two more minutes of samples take; for what is noted of each block. */
  private static final long TOLERANCE_BYTES =
      (LONG_SECONDS - SHORT_SECONDS) * RATE * (long) Double.BYTES / 10;

  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  @TempDir Path folder;
  private Path chain;

  @BeforeEach
  void writeTakes() throws IOException {
    for (int seconds : new int[] {SHORT_SECONDS, LONG_SECONDS}) {
      Takes.write(folder.resolve(seconds + ".wav"), RATE, Takes.noise(seconds * RATE, 5));
    }
    chain =
        Files.writeString(
            folder.resolve("c.chain"),
            """
            chain c {
              high-pass 70 Hz 24 dB/oct
              compressor threshold -24 dBFS ratio 3:1 attack 8 ms release 120 ms
              reverb 400 ms blend 15 %
            }
            """);
  }

  private long reserved(int seconds, Object... words) {
    Path take = folder.resolve(seconds + ".wav");
    Object[] all = Arrays.stream(words).map(word -> word.equals("TAKE") ? take : word).toArray();
    long before = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
    CommandRun run = CommandRun.of(all);
    long after = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
    assertThat(run.code()).as(run.err()).isZero();
    return after - before;
  }

  private void checkReservesTheSame(Object... words) {
    long warmUp = reserved(SHORT_SECONDS, words);
    long shortTake = reserved(SHORT_SECONDS, words);
    long longTake = reserved(LONG_SECONDS, words);
    assertThat(warmUp).isPositive();
    assertThat(longTake).isLessThan(shortTake + TOLERANCE_BYTES);
  }

  @Test
  void measuring_aLongTake_reservesWhatAShortOneDoes() {
    checkReservesTheSame("measure", "TAKE");
  }

  @Test
  void rendering_aLongTake_reservesWhatAShortOneDoes() {
    checkReservesTheSame(
        "render",
        chain,
        "--take",
        "TAKE",
        "-o",
        folder.resolve("out.wav"),
        "--force",
        "--threads",
        "1",
        "--rate",
        "11025",
        "--level-match");
  }
}
