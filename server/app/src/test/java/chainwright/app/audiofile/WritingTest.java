package chainwright.app.audiofile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class WritingTest {

  private static final int FRAMES = 101;

  @TempDir Path folder;

  static Stream<AudioFormat> formats() {
    Stream<SampleKind> integers =
        IntStream.of(1, 7, 8, 12, 16, 20, 24, 31, 32).mapToObj(SampleKind::ofInteger);
    Stream<SampleKind> floats = Stream.of(SampleKind.ofFloat(32), SampleKind.ofFloat(64));
    return Stream.concat(integers, floats)
        .flatMap(
            kind ->
                Stream.of(FileKind.WAVE, FileKind.AIFF)
                    .flatMap(
                        file ->
                            Stream.of(1, 2, 5)
                                .map(channels -> AudioFormat.of(file, 48000, channels, kind))));
  }

  /** Odd numbers of frames, bytes and channels included, and both ends of full scale. */
  @ParameterizedTest
  @MethodSource("formats")
  void samples_writtenAndRead_areTheSame(AudioFormat format) throws IOException {
    int bits = format.samples().isInteger() ? format.samples().bits() : 24;
    double[][] samples = Recording.integers(bits, format.channels(), FRAMES);
    Path file = folder.resolve("out");
    WriteSummary summary = write(file, format, samples, false);
    assertThat(summary).isEqualTo(new WriteSummary(FRAMES, 0, 0));
    try (AudioReader reader = AudioFiles.open(file)) {
      assertThat(reader.warnings()).isEmpty();
      assertThat(reader.format()).isEqualTo(format);
      assertThat(Recording.readAll(reader)).isDeepEqualTo(samples);
    }
    assertThat(names()).containsExactly("out");
  }

  @Test
  void speakers_ofAWave_areKept() throws IOException {
    List<Speaker> speakers =
        List.of(
            Speaker.FRONT_LEFT,
            Speaker.FRONT_RIGHT,
            Speaker.LOW_FREQUENCY,
            Speaker.SIDE_LEFT,
            Speaker.SIDE_RIGHT);
    AudioFormat format =
        new AudioFormat(FileKind.WAVE, 48000, 5, speakers, SampleKind.ofInteger(24));
    Path file = folder.resolve("out.wav");
    write(file, format, Recording.integers(24, 5, FRAMES), false);
    try (AudioReader reader = AudioFiles.open(file)) {
      assertThat(reader.format()).isEqualTo(format);
    }
  }

  @Test
  void aiff_rateBetweenWholeHz_isKept() throws IOException {
    AudioFormat format = AudioFormat.of(FileKind.AIFF, 44055.94, 1, SampleKind.ofInteger(16));
    Path file = folder.resolve("out.aiff");
    write(file, format, Recording.integers(16, 1, FRAMES), false);
    try (AudioReader reader = AudioFiles.open(file)) {
      assertThat(reader.format().sampleRateHz()).isEqualTo(44055.94);
    }
    AudioFormat wave = AudioFormat.of(FileKind.WAVE, 44055.94, 1, SampleKind.ofInteger(16));
    assertThatThrownBy(() -> AudioFiles.create(folder.resolve("out.wav"), wave, false))
        .isInstanceOf(OutputFileException.class)
        .hasMessageContaining("whole Hz in a WAV file, found 44055.94 Hz");
  }

  /** The scale is 2^15, halves go to the even neighbour, and what does not fit is held. */
  @Test
  void integers_ofSamplesBetweenSteps_areTheNearestAndClippingIsCounted() throws IOException {
    double[] steps = {0.4, 0.5, 0.6, 1.5, -0.5, -1.5, 32767, 32767.4, 32767.5, 32768, -32768};
    double[] wanted = {0, 0, 1, 2, 0, -2, 32767, 32767, 32767, 32767, -32768};
    double[][] samples = {new double[steps.length + 4]};
    for (int i = 0; i < steps.length; i++) {
      samples[0][i] = steps[i] / 32768;
    }
    samples[0][11] = Double.POSITIVE_INFINITY;
    samples[0][12] = Double.NEGATIVE_INFINITY;
    samples[0][13] = Double.NaN;
    samples[0][14] = -1e300;
    Path file = folder.resolve("out.wav");
    AudioFormat format = AudioFormat.of(FileKind.WAVE, 8000, 1, SampleKind.ofInteger(16));
    assertThat(write(file, format, samples, false)).isEqualTo(new WriteSummary(15, 5, 1));
    try (AudioReader reader = AudioFiles.open(file)) {
      double[] read = Recording.readAll(reader)[0];
      for (int i = 0; i < wanted.length; i++) {
        assertThat(read[i] * 32768).as("%s steps", steps[i]).isEqualTo(wanted[i]);
      }
      assertThat(new double[] {read[11] * 32768, read[12] * 32768, read[13], read[14]})
          .containsExactly(32767, -32768, 0, -1);
    }
  }

  @Test
  void file_thatExists_isNotReplacedUnlessForced() throws IOException {
    Path file = folder.resolve("out.wav");
    Files.writeString(file, "precious");
    AudioFormat format = AudioFormat.of(FileKind.WAVE, 48000, 1, SampleKind.ofInteger(16));
    assertThatThrownBy(() -> AudioFiles.create(file, format, false))
        .isInstanceOf(OutputFileException.class)
        .hasMessage(
            "`"
                + file
                + "`: expected a new file, found one that is there already; --force replaces it");
    assertThat(file).hasContent("precious");
    assertThat(names()).containsExactly("out.wav");
    write(file, format, Recording.integers(16, 1, FRAMES), true);
    try (AudioReader reader = AudioFiles.open(file)) {
      assertThat(reader.frames()).isEqualTo(FRAMES);
    }
  }

  @Test
  void file_thatAppearsMeanwhile_isNotReplaced() throws IOException {
    Path file = folder.resolve("out.wav");
    AudioFormat format = AudioFormat.of(FileKind.WAVE, 48000, 1, SampleKind.ofInteger(16));
    try (AudioWriter writer = AudioFiles.create(file, format, false)) {
      writer.write(Recording.integers(16, 1, FRAMES), 0, FRAMES);
      Files.writeString(file, "somebody else's");
      assertThatThrownBy(writer::finish)
          .isInstanceOf(OutputFileException.class)
          .hasMessageContaining("found one that is there already");
    }
    assertThat(file).hasContent("somebody else's");
    assertThat(names()).containsExactly("out.wav");
  }

  @Test
  void writer_closedBeforeTheEnd_leavesNothing() throws IOException {
    Path file = folder.resolve("out.wav");
    AudioFormat format = AudioFormat.of(FileKind.WAVE, 48000, 1, SampleKind.ofInteger(16));
    try (AudioWriter writer = AudioFiles.create(file, format, false)) {
      writer.write(Recording.integers(16, 1, FRAMES), 0, FRAMES);
      assertThat(names()).singleElement().asString().endsWith(OutputDraft.ENDING);
    }
    assertThat(names()).isEmpty();
  }

  /** The room ends in the header, amid the samples, and when the header is completed. */
  @Test
  void disk_full_leavesTheOldFileAndNoDraft() throws IOException {
    double[][] samples = Recording.integers(24, 2, 50_000);
    Path file = folder.resolve("out");
    for (FileKind kind : List.of(FileKind.WAVE, FileKind.AIFF, FileKind.FLAC)) {
      AudioFormat format = AudioFormat.of(kind, 48000, 2, SampleKind.ofInteger(24));
      write(file, format, samples, true);
      long full = Files.size(file);
      for (long room : new long[] {0, full / 2, full - 10, full + 2}) {
        Files.writeString(file, "the old one");
        OutputDraft draft = OutputDraft.begin(file, true);
        ByteSink bytes = new ByteSink(new FullDisk(draft.channel(), room));
        assertThatThrownBy(
                () -> {
                  try (AudioWriter writer =
                      DraftedWriter.of(draft, bytes, format, AudioFiles.beginning(kind))) {
                    writer.write(samples, 0, 50_000);
                    writer.finish();
                  }
                })
            .isInstanceOf(OutputFileException.class)
            .hasMessageContaining("cannot be written: No space left on device");
        assertThat(file).hasContent("the old one");
        assertThat(names()).containsExactly("out");
      }
    }
  }

  @Test
  void writer_afterTheEnd_refusesMore() throws IOException {
    AudioFormat format = AudioFormat.of(FileKind.WAVE, 48000, 1, SampleKind.ofInteger(16));
    try (AudioWriter writer = AudioFiles.create(folder.resolve("out.wav"), format, false)) {
      writer.finish();
      assertThatThrownBy(() -> writer.write(new double[1][1], 0, 1))
          .isInstanceOf(IllegalStateException.class);
      assertThatThrownBy(writer::finish).isInstanceOf(IllegalStateException.class);
    }
  }

  @Test
  void folder_thatIsNone_isSaid() {
    AudioFormat format = AudioFormat.of(FileKind.WAVE, 48000, 1, SampleKind.ofInteger(16));
    assertThatThrownBy(() -> AudioFiles.create(folder.resolve("no/out.wav"), format, false))
        .isInstanceOf(OutputFileException.class)
        .hasMessageContaining("expected the folder `" + folder.resolve("no"));
    assertThatThrownBy(() -> AudioFiles.create(folder, format, true))
        .isInstanceOf(OutputFileException.class)
        .hasMessageContaining("found a folder; name a file in it");
  }

  /** With a low limit in place of 4 GiB; the sizes of 64 bits are read by our reader. */
  @Test
  void wave_largerThanSizesOf32Bits_becomesRf64() throws IOException {
    double[][] samples = Recording.integers(16, 2, FRAMES);
    for (SampleKind kind : List.of(SampleKind.ofInteger(16), SampleKind.ofFloat(32))) {
      AudioFormat format = AudioFormat.of(FileKind.WAVE, 48000, 2, kind);
      MemoryChannel file = new MemoryChannel(new byte[0]);
      ByteSink bytes = new ByteSink(file);
      WaveSink sink = new WaveSink(format, bytes, 300);
      sink.write(samples, 0, FRAMES);
      sink.complete();
      bytes.complete();
      assertThat(new String(file.content(), 0, 4, StandardCharsets.US_ASCII)).isEqualTo("RF64");
      try (AudioReader reader = Recording.open(file.content())) {
        assertThat(reader.warnings()).isEmpty();
        assertThat(Recording.readAll(reader)).isDeepEqualTo(samples);
      }
    }
  }

  private static WriteSummary write(
      Path file, AudioFormat format, double[][] samples, boolean mayReplace) throws IOException {
    try (AudioWriter writer = AudioFiles.create(file, format, mayReplace)) {
      int frames = samples[0].length;
      for (int done = 0; done < frames; done += 29) {
        writer.write(samples, done, Math.min(29, frames - done));
      }
      return writer.finish();
    }
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).toList();
    }
  }
}
