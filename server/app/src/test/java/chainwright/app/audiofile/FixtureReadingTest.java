package chainwright.app.audiofile;

import static chainwright.app.audiofile.Speaker.BACK_LEFT;
import static chainwright.app.audiofile.Speaker.BACK_RIGHT;
import static chainwright.app.audiofile.Speaker.FRONT_CENTRE;
import static chainwright.app.audiofile.Speaker.FRONT_LEFT;
import static chainwright.app.audiofile.Speaker.FRONT_RIGHT;
import static chainwright.app.audiofile.Speaker.LOW_FREQUENCY;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Files that libsndfile wrote and read back, see {@code make.py}; every sample must be the same.
 */
class FixtureReadingTest {

  private static final int FRAMES = 60;

  record Case(String file, FileKind kind, double rateHz, int channels, SampleKind samples) {
    @Override
    public String toString() {
      return file;
    }
  }

  static Stream<Case> files() {
    return Stream.of(
        new Case("wav-8.wav", FileKind.WAVE, 8000, 1, SampleKind.ofInteger(8)),
        new Case("wav-16.wav", FileKind.WAVE, 44100, 2, SampleKind.ofInteger(16)),
        new Case("wav-24.wav", FileKind.WAVE, 96000, 3, SampleKind.ofInteger(24)),
        new Case("wav-32.wav", FileKind.WAVE, 384000, 2, SampleKind.ofInteger(32)),
        new Case("wav-32f.wav", FileKind.WAVE, 48000, 2, SampleKind.ofFloat(32)),
        new Case("wav-64f.wav", FileKind.WAVE, 192000, 2, SampleKind.ofFloat(64)),
        new Case("wavex-24.wav", FileKind.WAVE, 48000, 6, SampleKind.ofInteger(24)),
        new Case("wavex-32f.wav", FileKind.WAVE, 48000, 4, SampleKind.ofFloat(32)),
        new Case("rf64-16.wav", FileKind.WAVE, 44100, 2, SampleKind.ofInteger(16)),
        new Case("aiff-8.aiff", FileKind.AIFF, 22050, 1, SampleKind.ofInteger(8)),
        new Case("aiff-16.aiff", FileKind.AIFF, 44100, 2, SampleKind.ofInteger(16)),
        new Case("aiff-24.aiff", FileKind.AIFF, 48000, 3, SampleKind.ofInteger(24)),
        new Case("aiff-32.aiff", FileKind.AIFF, 96000, 2, SampleKind.ofInteger(32)),
        new Case("aifc-sowt.aiff", FileKind.AIFF, 44100, 2, SampleKind.ofInteger(16)),
        new Case("aifc-32f.aiff", FileKind.AIFF, 48000, 2, SampleKind.ofFloat(32)),
        new Case("aifc-64f.aiff", FileKind.AIFF, 48000, 2, SampleKind.ofFloat(64)));
  }

  @ParameterizedTest
  @MethodSource("files")
  void file_ofAnotherLibrary_holdsTheSamplesOfTheFormula(Case wanted) throws IOException {
    try (AudioReader reader = Recording.open(Recording.fixture(wanted.file()))) {
      AudioFormat format = reader.format();
      assertThat(format.file()).isEqualTo(wanted.kind());
      assertThat(format.sampleRateHz()).isEqualTo(wanted.rateHz());
      assertThat(format.channels()).isEqualTo(wanted.channels());
      assertThat(format.samples()).isEqualTo(wanted.samples());
      assertThat(reader.warnings()).isEmpty();
      assertThat(reader.frames()).isEqualTo(FRAMES);
      assertThat(Recording.readAll(reader)).isDeepEqualTo(samples(wanted));
    }
  }

  private static double[][] samples(Case wanted) {
    SampleKind kind = wanted.samples();
    return kind.isInteger()
        ? Recording.integers(kind.bits(), wanted.channels(), FRAMES)
        : Recording.floats(wanted.channels(), FRAMES);
  }

  @ParameterizedTest
  @MethodSource("files")
  void file_readFromAnyFrame_goesOnFromThere(Case wanted) throws IOException {
    double[][] all = samples(wanted);
    try (AudioReader reader = Recording.open(Recording.fixture(wanted.file()))) {
      for (int from : new int[] {59, 0, 31, 60, 7}) {
        reader.seek(from);
        double[][] rest = Recording.readAll(reader);
        for (int channel = 0; channel < all.length; channel++) {
          assertThat(rest[channel]).isEqualTo(Arrays.copyOfRange(all[channel], from, FRAMES));
        }
      }
    }
  }

  @Test
  void extensible_withMask_namesTheSpeakers() throws IOException {
    try (AudioReader reader = Recording.open(Recording.fixture("wavex-24.wav"))) {
      assertThat(reader.format().speakers())
          .isEqualTo(
              List.of(FRONT_LEFT, FRONT_RIGHT, FRONT_CENTRE, LOW_FREQUENCY, BACK_LEFT, BACK_RIGHT));
    }
  }

  @Test
  void region_ofAFile_isThatPart() throws IOException {
    double[] left = Recording.integers(16, 2, FRAMES)[0];
    try (AudioReader whole = Recording.open(Recording.fixture("wav-16.wav"));
        AudioReader part = whole.region(20, 50)) {
      assertThat(part.frames()).isEqualTo(30);
      assertThat(Recording.readAll(part)[0]).isEqualTo(Arrays.copyOfRange(left, 20, 50));
      part.seek(29);
      assertThat(Recording.readAll(part)[0]).containsExactly(left[49]);
    }
  }
}
