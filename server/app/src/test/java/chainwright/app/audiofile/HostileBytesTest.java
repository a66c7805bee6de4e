package chainwright.app.audiofile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Thousands of small files with bytes changed, taken out, put in and cut off, by a seeded chance:
 * each is read to its end or refused by an {@link AudioFileException}, soon.
 */
class HostileBytesTest {

  private static final int MUTATIONS_A_FILE = 2000;

  /** What headers lie with. */
  private static final List<byte[]> NASTY =
      List.of(
          new byte[4],
          new byte[] {-1, -1, -1, -1},
          new byte[] {-1, -1, -1, 0x7f},
          new byte[] {0x7f, -1, -1, -1},
          new byte[] {0, 0, 0, (byte) 0x80},
          new byte[] {1, 0, 0, 0});

  static Stream<String> files() {
    return Stream.of(
        "wav-8.wav",
        "wav-16.wav",
        "wav-64f.wav",
        "wavex-24.wav",
        "rf64-16.wav",
        "aiff-24.aiff",
        "aifc-sowt.aiff",
        "aifc-32f.aiff",
        "flac-8.flac",
        "flac-16.flac",
        "flac-32.flac",
        "flac-tones.flac",
        "vorbis.ogg",
        "vorbis-long.ogg");
  }

  @ParameterizedTest
  @MethodSource("files")
  void file_mutated_isReadOrRefused(String name) {
    byte[] whole = Recording.fixture(name);
    Random chance = new Random(name.hashCode());
    Assertions.assertTimeout(
        Duration.ofSeconds(60),
        () -> {
          for (int i = 0; i < MUTATIONS_A_FILE; i++) {
            byte[] bytes = mutated(whole, chance);
            check(name.endsWith(".ogg") ? OggSums.mend(bytes) : bytes);
          }
        });
  }

  private static void check(byte[] bytes) throws IOException {
    try (AudioReader reader = Recording.open(bytes)) {
      double[][] block = new double[reader.format().channels()][1000];
      long read = 0;
      int got;
      while ((got = reader.read(block, 0, 1000)) > 0) {
        read += got;
        // A constant signal takes next to nothing in some files, but never less than this.
        assertThat(read).isLessThanOrEqualTo(reader.frames());
      }
      assertThat(read).isEqualTo(reader.frames());
      reader.seek(reader.frames() / 2);
      reader.read(block, 0, 10);
    } catch (AudioFileException refused) {
      assertThat(refused).hasMessageContaining("`take`").hasMessageContaining("expected");
    }
  }

  private static byte[] mutated(byte[] whole, Random chance) {
    byte[] bytes = whole.clone();
    for (int left = 1 + chance.nextInt(4); left > 0; left--) {
      // Most of what matters stands at the beginning.
      int limit = chance.nextBoolean() ? Math.min(100, bytes.length) : bytes.length;
      int at = chance.nextInt(Math.max(limit - 4, 1));
      switch (chance.nextInt(6)) {
        case 0 -> bytes = Arrays.copyOf(bytes, at);
        case 1 -> bytes = spliced(bytes, at, at + 1 + chance.nextInt(4), new byte[0]);
        case 2 -> {
          byte[] more = new byte[1 + chance.nextInt(5)];
          chance.nextBytes(more);
          bytes = spliced(bytes, at, at, more);
        }
        case 3 -> bytes = spliced(bytes, at, at + 4, NASTY.get(chance.nextInt(NASTY.size())));
        case 4 -> {
          if (at < bytes.length) {
            bytes[at] ^= (byte) (1 << chance.nextInt(8));
          }
        }
        default -> {
          if (at < bytes.length) {
            bytes[at] = (byte) chance.nextInt();
          }
        }
      }
      if (bytes.length == 0) {
        break;
      }
    }
    return bytes;
  }

  private static byte[] spliced(byte[] bytes, int from, int to, byte[] middle) {
    int start = Math.min(from, bytes.length);
    int end = Math.min(to, bytes.length);
    byte[] all = new byte[start + middle.length + bytes.length - end];
    System.arraycopy(bytes, 0, all, 0, start);
    System.arraycopy(middle, 0, all, start, middle.length);
    System.arraycopy(bytes, end, all, start + middle.length, bytes.length - end);
    return all;
  }
}
