package chainwright.app.audiofile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is coded and decoded again is the same, with the file's own sums checked on the way. */
class FlacWritingTest {

  private static final int FRAMES = 2 * 4096 + 1001;

  static IntStream depths() {
    return IntStream.rangeClosed(4, 32);
  }

  /** Signals that drive each way of coding: two channels that are alike, or opposite, or apart. */
  private static double[][] signal(String kind, int frames, Random chance) {
    double[][] planes = new double[2][frames];
    for (int i = 0; i < frames; i++) {
      double tone = 0.6 * Math.sin(0.05 * i) + 0.3 * Math.sin(0.31 * i);
      double noise = chance.nextDouble() * 2 - 1;
      planes[0][i] =
          switch (kind) {
            case "silence" -> 0;
            case "constant" -> -1;
            case "square" -> i / 64 % 2 == 0 ? -1 : 1;
            case "noise" -> noise;
            case "impulse" -> i == 4097 ? 1 : 0;
            case "ramp" -> (double) i / frames;
            default -> tone + 1e-3 * noise;
          };
      planes[1][i] =
          switch (kind) {
            case "alike" -> planes[0][i] + 1e-4 * (chance.nextDouble() - 0.5);
            case "opposite" -> -planes[0][i];
            case "square" -> -planes[0][i];
            case "one side" -> 0;
            default -> planes[0][i] * 0.37 + 1e-2 * (chance.nextDouble() - 0.5);
          };
    }
    return planes;
  }

  @ParameterizedTest
  @MethodSource("depths")
  void signal_ofAnyDepth_isTheSameAfterwards(int bits) throws IOException {
    Random chance = new Random(bits);
    List<String> kinds =
        List.of(
            "silence",
            "constant",
            "square",
            "noise",
            "impulse",
            "ramp",
            "alike",
            "opposite",
            "one side");
    for (String kind : kinds) {
      double[][] rounded = rounded(signal(kind, FRAMES, chance), bits);
      assertThat(decoded(coded(rounded, 48000, bits))).as(kind).isDeepEqualTo(rounded);
    }
  }

  @ParameterizedTest
  @MethodSource("lengths")
  void file_ofAnyLength_isTheSameAfterwards(int frames) throws IOException {
    double[][] rounded = rounded(signal("alike", frames, new Random(frames)), 16);
    assertThat(decoded(coded(rounded, 44100, 16))).isDeepEqualTo(rounded);
  }

  static Stream<Integer> lengths() {
    return Stream.of(0, 1, 2, 3, 4, 5, 15, 16, 17, 4095, 4096, 4097, 8192);
  }

  /** Beyond frame 128 the numbers of frames take two bytes, beyond 2048 three. */
  @Test
  void file_ofThousandsOfBlocks_canBeReadFromAnyPlace() throws IOException {
    int frames = 2100 * 4096;
    double[][] ramp = new double[1][frames];
    for (int i = 0; i < frames; i++) {
      ramp[0][i] = (i / 300 % 65536 - 32768) / 32768.0;
    }
    try (AudioReader reader = Recording.open(coded(ramp, 8000, 16))) {
      assertThat(reader.frames()).isEqualTo(frames);
      Random chance = new Random(5);
      double[][] block = new double[1][10_000];
      for (int i = 0; i < 100; i++) {
        int from = chance.nextInt(frames - 10_000);
        reader.seek(from);
        assertThat(reader.read(block, 0, 10_000)).isEqualTo(10_000);
        assertThat(block[0]).isEqualTo(Arrays.copyOfRange(ramp[0], from, from + 10_000));
      }
      assertThat(reader.warnings()).isEmpty();
    }
  }

  @Test
  void tones_coded_takeLessThanHalf() throws IOException {
    double[][] rounded = rounded(signal("alike", FRAMES, new Random(1)), 16);
    assertThat(coded(rounded, 48000, 16).length).isLessThan(FRAMES * 4 / 2);
  }

  @Test
  void speakers_thatAreNotTheUsual_areKept() throws IOException {
    List<Speaker> speakers =
        List.of(Speaker.FRONT_LEFT, Speaker.FRONT_RIGHT, Speaker.LOW_FREQUENCY);
    AudioFormat format =
        new AudioFormat(FileKind.FLAC, 384000, 3, speakers, SampleKind.ofInteger(24));
    double[][] samples = Recording.integers(24, 3, 5000);
    MemoryChannel file = new MemoryChannel(new byte[0]);
    write(file, format, samples);
    try (AudioReader reader = Recording.open(file.content())) {
      assertThat(reader.format()).isEqualTo(format);
      assertThat(Recording.readAll(reader)).isDeepEqualTo(samples);
    }
  }

  @Test
  void floats_inFlac_areRefusedBeforeAnythingIsWritten() {
    AudioFormat format = AudioFormat.of(FileKind.FLAC, 48000, 2, SampleKind.ofFloat(32));
    assertThatThrownBy(() -> AudioFiles.create(Path.of("no", "out.flac"), format, false))
        .isInstanceOf(OutputFileException.class)
        .hasMessageContaining("found 2 channels of 32 bit float; write integers, or a WAV file");
  }

  private static double[][] rounded(double[][] planes, int bits) {
    double scale = 1L << (bits - 1);
    double[][] rounded = new double[planes.length][planes[0].length];
    for (int channel = 0; channel < planes.length; channel++) {
      for (int i = 0; i < planes[0].length; i++) {
        double integer = Math.rint(planes[channel][i] * scale);
        rounded[channel][i] = Math.max(-scale, Math.min(scale - 1, integer)) / scale;
      }
    }
    return rounded;
  }

  private static byte[] coded(double[][] planes, double rateHz, int bits) throws IOException {
    MemoryChannel file = new MemoryChannel(new byte[0]);
    AudioFormat format =
        new AudioFormat(
            FileKind.FLAC,
            rateHz,
            planes.length,
            UsualSpeakers.of(planes.length),
            SampleKind.ofInteger(bits));
    WriteSummary summary = write(file, format, planes);
    assertThat(summary).isEqualTo(new WriteSummary(planes[0].length, 0, 0));
    return file.content();
  }

  private static WriteSummary write(MemoryChannel file, AudioFormat format, double[][] planes)
      throws IOException {
    ByteSink bytes = new ByteSink(file);
    FlacSink sink = new FlacSink(format, bytes);
    for (int done = 0; done < planes[0].length; done += 777) {
      sink.write(planes, done, Math.min(777, planes[0].length - done));
    }
    WriteSummary summary = sink.complete();
    bytes.complete();
    return summary;
  }

  private static double[][] decoded(byte[] bytes) throws IOException {
    try (AudioReader reader = Recording.open(bytes)) {
      double[][] read = Recording.readAll(reader);
      assertThat(reader.warnings()).isEmpty();
      return read;
    }
  }
}
