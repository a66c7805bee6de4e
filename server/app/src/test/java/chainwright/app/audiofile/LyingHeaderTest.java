package chainwright.app.audiofile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Headers that say something else than the file holds. The samples are 16 bit, mono, at 8 kHz,
 * 1000, 1001, 1002 ...; all sizes are written by hand here.
 */
class LyingHeaderTest {

  private static final int RATE_HZ = 8000;
  private static final int UNKNOWN = -1;

  /** A file, how many of its frames are read, and what the only warning says; none if empty. */
  static Stream<Arguments> files() {
    byte[] second = samples(RATE_HZ);
    byte[] format = chunk("fmt ", 16, format(1, 1, RATE_HZ, 2, 16));
    return Stream.of(
        arguments("all true", wave(format, chunk("data", 16000, second)), RATE_HZ, ""),
        arguments(
            "size 0 of a recorder that lost power",
            riff(0, format, chunk("data", 0, second)),
            RATE_HZ,
            "the header says 0.000 s, the file holds 1.000 s, as if the recording had not been"
                + " ended: all of it is read"),
        arguments(
            "size FFFFFFFF of a stream",
            riff(UNKNOWN, format, chunk("data", UNKNOWN, second)),
            RATE_HZ,
            "the header does not say how long it is, as if the recording had not been ended: all"
                + " 1.000 s that the file holds are read"),
        arguments(
            "broken off",
            Arrays.copyOf(wave(format, chunk("data", 16000, second)), 44 + 12800),
            6400,
            "the header says 1.000 s, the file holds 0.800 s: the rest is missing, perhaps a copy"
                + " that broke off"),
        arguments(
            "broken off amid a frame",
            Arrays.copyOf(wave(format, chunk("data", UNKNOWN - 1, second)), 44 + 12801),
            6400,
            "says 268435.456 s, the file holds 0.800 s"),
        arguments(
            "size too small, no chunk after it",
            wave(format, chunk("data", 8000, second)),
            4000,
            "the samples end 8000 bytes before the file does"),
        arguments(
            "empty, and a tag after it",
            wave(format, chunk("data", 0, new byte[0]), chunk("LIST", 4, "INFO".getBytes(ascii()))),
            0,
            ""),
        arguments(
            "size of the whole wrong",
            riff(99, format, chunk("data", 16000, second)),
            RATE_HZ,
            "the header says that the file has 107 bytes, it has 16044: the samples are all there"),
        arguments(
            "tags of odd size, padded",
            wave(
                chunk("bext", 3, new byte[] {1, 2, 3, 0}),
                format,
                chunk("LIST", 1, new byte[] {9, 0}),
                chunk("data", 16000, second)),
            RATE_HZ,
            ""),
        arguments(
            "tags of odd size, the padding forgotten",
            wave(chunk("bext", 3, new byte[] {1, 2, 3}), format, chunk("data", 16000, second)),
            RATE_HZ,
            ""),
        arguments(
            "the samples before what they are",
            wave(chunk("data", 16000, second), format),
            RATE_HZ,
            ""),
        arguments(
            "RF64 with true sizes",
            longWave(36 + 4 + 24 + 8 + 16000, 16000, format, chunk("data", UNKNOWN, second)),
            RATE_HZ,
            ""),
        arguments(
            "RF64 whose long size lies",
            longWave(1L << 40, 1L << 40, format, chunk("data", UNKNOWN, second)),
            RATE_HZ,
            "the file holds 1.000 s: the rest is missing"),
        arguments(
            "RF64 that was never ended",
            longWave(-1, -1, format, chunk("data", UNKNOWN, second)),
            RATE_HZ,
            "the header does not say how long it is"),
        arguments(
            "RF64 without long sizes",
            bytes(
                "RF64".getBytes(ascii()),
                low(UNKNOWN),
                "WAVE".getBytes(ascii()),
                format,
                chunk("data", UNKNOWN, second)),
            RATE_HZ,
            "the header does not say how long it is"),
        arguments(
            "a frame's size that does not fit",
            wave(chunk("fmt ", 16, format(1, 1, RATE_HZ, 7, 16)), chunk("data", 16000, second)),
            RATE_HZ,
            "a frame has 7 bytes, which does not fit 1 channels of 16 bits: it is read with 2"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("files")
  void wave_thatLies_isReadAsFarAsItGoesAndSaysSo(
      String name, byte[] bytes, int frames, String warning) throws IOException {
    try (AudioReader reader = Recording.open(bytes)) {
      assertThat(reader.frames()).isEqualTo(frames);
      double[] read = Recording.readAll(reader)[0];
      for (int i = 0; i < read.length; i++) {
        assertThat(read[i] * 32768).isEqualTo((short) (1000 + i));
      }
      if (warning.isEmpty()) {
        assertThat(reader.warnings()).isEmpty();
      } else {
        assertThat(reader.warnings().get(0)).contains(warning);
      }
    }
  }

  /** A file, and what the message says is expected, found and to be done. */
  static Stream<Arguments> refused() {
    byte[] data = chunk("data", 4, new byte[4]);
    return Stream.of(
        arguments(
            "empty",
            new byte[0],
            UnknownAudioException.class,
            List.of("expected a WAV", "found an empty file", "export")),
        arguments(
            "text",
            "chain vocal {".getBytes(ascii()),
            UnknownAudioException.class,
            List.of("found a text", "export")),
        arguments(
            "no format",
            wave(data),
            DamagedAudioException.class,
            List.of("a `fmt ` chunk", "none in 24 bytes", "copy the file again")),
        arguments(
            "no samples",
            wave(chunk("fmt ", 16, format(1, 1, RATE_HZ, 2, 16))),
            DamagedAudioException.class,
            List.of("a `data` chunk")),
        arguments(
            "half a format",
            wave(chunk("fmt ", 10, new byte[10]), data),
            DamagedAudioException.class,
            List.of("16 bytes of `fmt ` or more, found 10")),
        arguments(
            "A-law",
            wave(chunk("fmt ", 16, format(6, 1, RATE_HZ, 1, 8)), data),
            UnsupportedAudioException.class,
            List.of("found A-law", "export it again")),
        arguments(
            "integers of 64 bits",
            wave(chunk("fmt ", 16, format(1, 1, RATE_HZ, 8, 64)), data),
            UnsupportedAudioException.class,
            List.of("integers of 64 bits")),
        arguments(
            "no channel",
            wave(chunk("fmt ", 16, format(1, 0, RATE_HZ, 0, 16)), data),
            UnsupportedAudioException.class,
            List.of("1 to 64 channels, found 0")),
        arguments(
            "65535 channels",
            wave(chunk("fmt ", 16, format(1, 65535, RATE_HZ, 65534, 16)), data),
            UnsupportedAudioException.class,
            List.of("1 to 64 channels, found 65535")),
        arguments(
            "1 Hz",
            wave(chunk("fmt ", 16, format(1, 1, 1, 2, 16)), data),
            UnsupportedAudioException.class,
            List.of("8 kHz to 384 kHz, found 1.0 Hz")));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("refused")
  void file_thatCannotBeRead_saysExpectedFoundAndWhatToDo(
      String name, byte[] bytes, Class<?> type, List<String> message) {
    assertThatThrownBy(() -> Recording.open(bytes))
        .isInstanceOf(type)
        .hasMessageStartingWith("`take`: expected ")
        .satisfies(e -> assertThat(e.getMessage()).contains(message));
  }

  private static byte[] samples(int count) {
    ByteBuffer samples = ByteBuffer.allocate(2 * count).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < count; i++) {
      samples.putShort((short) (1000 + i));
    }
    return samples.array();
  }

  private static byte[] format(int tag, int channels, int rateHz, int frameBytes, int bits) {
    return ByteBuffer.allocate(16)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putShort((short) tag)
        .putShort((short) channels)
        .putInt(rateHz)
        .putInt(rateHz * frameBytes)
        .putShort((short) frameBytes)
        .putShort((short) bits)
        .array();
  }

  private static byte[] chunk(String mark, int statedBytes, byte[] content) {
    return bytes(mark.getBytes(ascii()), low(statedBytes), content);
  }

  private static byte[] wave(byte[]... chunks) {
    return riff(4 + bytes(chunks).length, chunks);
  }

  private static byte[] riff(int statedBytes, byte[]... chunks) {
    return bytes(chunk("RIFF", statedBytes, "WAVE".getBytes(ascii())), bytes(chunks));
  }

  private static byte[] longWave(long statedBytes, long statedData, byte[]... chunks) {
    byte[] sizes =
        ByteBuffer.allocate(28)
            .order(ByteOrder.LITTLE_ENDIAN)
            .putLong(statedBytes)
            .putLong(statedData)
            .array();
    byte[] start = chunk("RF64", UNKNOWN, "WAVE".getBytes(ascii()));
    return bytes(start, chunk("ds64", 28, sizes), bytes(chunks));
  }

  private static byte[] low(int number) {
    return ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN).putInt(number).array();
  }

  private static byte[] bytes(byte[]... parts) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      all.writeBytes(part);
    }
    return all.toByteArray();
  }

  private static Charset ascii() {
    return StandardCharsets.US_ASCII;
  }
}
