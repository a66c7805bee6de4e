package chainwright.app.audiofile;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Memory does not grow with the length: once running, reading reserves none. */
class LongFileTest {

  private static final int BLOCK_FRAMES = 4096;
  private static final int BLOCKS = 400;

  /** For what the virtual machine reserves by itself; the samples in question take 26 MB. */
  private static final long TOLERANCE_BYTES = 400_000;

  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private static long reserved() {
    return THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
  }

  @ParameterizedTest
  @EnumSource(
      value = FileKind.class,
      names = {"WAVE", "AIFF", "FLAC"})
  void file_ofAnyLength_isReadInTheMemoryOfAShortOne(FileKind kind) throws IOException {
    AudioFormat format = AudioFormat.of(kind, 48000, 2, SampleKind.ofInteger(16));
    double[][] block = Recording.integers(16, 2, BLOCK_FRAMES);
    MemoryChannel file = new MemoryChannel(new byte[0]);
    ByteSink bytes = new ByteSink(file);
    SampleSink sink = AudioFiles.beginning(kind).begin(format, bytes);
    for (int i = 0; i < BLOCKS; i++) {
      sink.write(block, 0, BLOCK_FRAMES);
    }
    sink.complete();
    bytes.complete();
    try (AudioReader reader = Recording.open(file.content())) {
      assertThat(reader.frames()).isEqualTo((long) BLOCKS * BLOCK_FRAMES);
      double[][] read = new double[2][BLOCK_FRAMES];
      for (int i = 0; i < 10; i++) {
        reader.read(read, 0, BLOCK_FRAMES);
      }
      long before = reserved();
      int blocks = 10;
      while (reader.read(read, 0, BLOCK_FRAMES) == BLOCK_FRAMES) {
        blocks++;
      }
      assertThat(reserved() - before).isLessThan(TOLERANCE_BYTES);
      assertThat(blocks).isEqualTo(BLOCKS);
      assertThat(read).isDeepEqualTo(block);
    }
  }
}
