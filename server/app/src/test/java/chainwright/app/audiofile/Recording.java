package chainwright.app.audiofile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Objects;

/** Reads whole files for the tests, and makes samples that have a formula. */
final class Recording {

  private Recording() {}

  /** The bytes of a file beside {@code make.py}. */
  static byte[] fixture(String name) {
    try (InputStream stream = Recording.class.getResourceAsStream("/audiofile/" + name)) {
      return Objects.requireNonNull(stream, name).readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static AudioReader open(byte[] bytes) throws IOException {
    return AudioFiles.open(new MemoryChannel(bytes), "take");
  }

  /** Reads to the end, in blocks of an odd size. */
  static double[][] readAll(AudioReader reader) throws IOException {
    int frames = Math.toIntExact(reader.frames() - reader.position());
    double[][] all = new double[reader.format().channels()][frames + 1];
    int done = 0;
    int got;
    while ((got = reader.read(all, done, Math.min(37, frames + 1 - done))) > 0) {
      done += got;
    }
    assertThat(done).as("the frames that were read").isEqualTo(frames);
    double[][] exact = new double[all.length][];
    for (int channel = 0; channel < all.length; channel++) {
      exact[channel] = Arrays.copyOf(all[channel], frames);
    }
    return exact;
  }

  /** The integers of {@code make.py}. */
  static long integer(int bits, int frame, int channel) {
    long half = 1L << (bits - 1);
    if (frame < 2) {
      return frame == 0 ? -half : half - 1;
    }
    long step = 1L << Math.max(bits - 16, 0);
    return Math.floorMod(7919L * frame * step + 104729L * channel, 2 * half) - half;
  }

  /** Those integers as samples. */
  static double[][] integers(int bits, int channels, int frames) {
    double[][] planes = new double[channels][frames];
    for (int channel = 0; channel < channels; channel++) {
      for (int frame = 0; frame < frames; frame++) {
        planes[channel][frame] = integer(bits, frame, channel) / (double) (1L << (bits - 1));
      }
    }
    return planes;
  }

  /** The floating-point samples of {@code make.py}. */
  static double[][] floats(int channels, int frames) {
    double[][] planes = integers(24, channels, frames);
    for (double[] plane : planes) {
      for (int frame = 0; frame < frames; frame++) {
        plane[frame] *= 2;
      }
    }
    return planes;
  }
}
