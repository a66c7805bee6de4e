package chainwright.app.audiofile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Files of the reference encoder (flac 1.4.2, see {@code make.py}) and of the standard itself.
 *
 * <p>Source: RFC 9639, appendix D: three files in hexadecimal, with their samples worked out.
 */
class FlacReadingTest {

  private static final String EXAMPLE_1 =
      "664c614380000022100010000000 0f00000f0ac442f0000000013e84b41807dc690307586a3dad1a2e0f"
          + "fff869180000bf0358fd0312 8baa9a";

  private static final String EXAMPLE_2 =
      "664c61430000002200100010000017000044 0ac442f000000013d5b0564975e98b8d8b930422757b8103"
          + "03000012000000000000000000000000000000000010"
          + "0400003a200000007265666572656e6365206c6962464c414320312e332e33203230313930383034"
          + "010000000e0000005449544c453dd7a9d79cd795d79d"
          + "81000006000000000000"
          + "fff86998000f991208670162 3d1442998f5df70d6fe00c17caeb21000ee7a77a24a1590c1217b603"
          + "097b784faa9a33d285e070ad5b1b4851b4010d99d2cd1a68f1e6b810"
          + "fff869180102a402c382c40bc14a03ee48dd03b67c1330";

  private static final String EXAMPLE_3 =
      "664c614380000022100010000000 1f00001f07d00070000000 18f8f9e396f5cbcfc6dc807f9977906b32"
          + "fff8680200 17e944004f6f313d1047d227cb6d090831452bdc28222280 57a3";

  private static final double[] LEFT_2 = {
    10372, 18041, 14942, 17876, 15627, 17899, 16242, 18077, 16824, 18263, 17295, -14418, -15201,
    -14508, -15195, -14818, -15486, -15349, -16054
  };

  private static final double[] RIGHT_2 = {
    6070, 10545, 8743, 10449, 9143, 10463, 9502, 10569, 9840, 10680, 10113, -8428, -8895, -8476,
    -8896, -8653, -9072, -8958, -9410
  };

  private static final double[] MONO_3 = {
    0, 79, 111, 78, 8, -61, -90, -68, -13, 42, 67, 53, 13, -27, -46, -38, -12, 14, 24, 19, 6, -4,
    -5, 0
  };

  static Stream<Arguments> examples() {
    return Stream.of(
        arguments(EXAMPLE_1, 44100, 16, new double[][] {{25588}, {10416}}),
        arguments(EXAMPLE_2, 44100, 16, new double[][] {LEFT_2, RIGHT_2}),
        arguments(EXAMPLE_3, 32000, 8, new double[][] {MONO_3}));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void example_ofTheStandard_hasItsSamples(String hex, double rateHz, int bits, double[][] wanted)
      throws IOException {
    try (AudioReader reader = Recording.open(bytes(hex))) {
      assertThat(reader.format().file()).isEqualTo(FileKind.FLAC);
      assertThat(reader.format().sampleRateHz()).isEqualTo(rateHz);
      assertThat(reader.format().samples()).isEqualTo(SampleKind.ofInteger(bits));
      double[][] read = Recording.readAll(reader);
      for (double[] plane : read) {
        for (int i = 0; i < plane.length; i++) {
          plane[i] *= 1 << (bits - 1);
        }
      }
      assertThat(read).isDeepEqualTo(wanted);
      assertThat(reader.warnings()).isEmpty();
    }
  }

  private static byte[] bytes(String hex) {
    return HexFormat.of().parseHex(hex.replace(" ", ""));
  }

  @ParameterizedTest
  @CsvSource({
    "flac-8.flac, 8000, 1, 8, 60",
    "flac-16.flac, 44100, 2, 16, 60",
    "flac-24.flac, 96000, 6, 24, 60",
    "flac-32.flac, 192000, 2, 32, 60",
    "flac-variable.flac, 44100, 2, 16, 3000"
  })
  void file_ofTheReference_holdsTheSamplesOfTheFormula(
      String file, double rateHz, int channels, int bits, int frames) throws IOException {
    try (AudioReader reader = Recording.open(Recording.fixture(file))) {
      assertThat(reader.format().sampleRateHz()).isEqualTo(rateHz);
      assertThat(reader.format().speakers()).isEqualTo(UsualSpeakers.of(channels));
      assertThat(Recording.readAll(reader))
          .isDeepEqualTo(Recording.integers(bits, channels, frames));
      assertThat(reader.warnings()).isEmpty();
    }
  }

  /** The sums are what metaflac prints, for predictors of all orders, and bits left out. */
  @ParameterizedTest
  @CsvSource({
    "flac-tones.flac, 16, 4851efd6f1d0ccf6f4c75a2b73cc022e",
    "flac-tones-24.flac, 24, f281e265461463d538358a8ac4745fb0",
    "flac-fixed.flac, 16, 8a8f04743d5e0144c74fdaf9fa6e3479",
    "flac-wasted.flac, 24, 6a040a5ec879dc4dd9134fa62610b08a"
  })
  void file_ofTheReference_hasItsMd5Sum(String file, int bits, String md5)
      throws IOException, NoSuchAlgorithmException {
    try (AudioReader reader = Recording.open(Recording.fixture(file))) {
      double[][] samples = Recording.readAll(reader);
      assertThat(reader.warnings()).isEmpty();
      MessageDigest digest = MessageDigest.getInstance("MD5");
      for (int i = 0; i < samples[0].length; i++) {
        for (double[] plane : samples) {
          int integer = (int) (plane[i] * (1L << (bits - 1)));
          byte[] low =
              ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN).putInt(integer).array();
          digest.update(low, 0, bits / 8);
        }
      }
      assertThat(HexFormat.of().formatHex(digest.digest())).isEqualTo(md5);
    }
  }

  @ParameterizedTest
  @CsvSource({"flac-tones.flac", "flac-variable.flac"})
  void file_readFromAnyFrame_goesOnFromThere(String file) throws IOException {
    try (AudioReader reader = Recording.open(Recording.fixture(file))) {
      double[][] all = Recording.readAll(reader);
      for (int from : new int[] {2999, 0, 511, 512, 513, 3000, 1700, 1690, 2100}) {
        reader.seek(from);
        double[][] rest = Recording.readAll(reader);
        for (int channel = 0; channel < all.length; channel++) {
          assertThat(rest[channel]).isEqualTo(Arrays.copyOfRange(all[channel], from, 3000));
        }
      }
      assertThat(reader.warnings()).isEmpty();
    }
  }

  /** Blocks have 512 frames, so the third begins at 1024 / 44100 s = 0.023 s. */
  @Test
  void frame_damaged_isSilentAndReportedWithItsTime() throws IOException {
    byte[] whole = Recording.fixture("flac-tones.flac");
    double[][] wanted = Recording.readAll(Recording.open(whole));
    byte[] damaged = whole.clone();
    damaged[whole.length / 2] ^= (byte) 0x10;
    try (AudioReader reader = Recording.open(damaged)) {
      double[][] read = Recording.readAll(reader);
      assertThat(reader.warnings()).hasSize(1);
      assertThat(reader.warnings().get(0))
          .isEqualTo("damaged at 0.023 s: the check sum of a frame is wrong; 0.012 s are silent");
      for (int channel = 0; channel < 2; channel++) {
        double[] expected = wanted[channel].clone();
        Arrays.fill(expected, 1024, 1536, 0);
        assertThat(read[channel]).isEqualTo(expected);
      }
    }
  }

  @Test
  void file_brokenOff_isReadAsFarAsItGoes() throws IOException {
    byte[] whole = Recording.fixture("flac-tones.flac");
    double[][] wanted = Recording.readAll(Recording.open(whole));
    try (AudioReader reader = Recording.open(Arrays.copyOf(whole, whole.length - 5))) {
      assertThat(reader.frames()).isEqualTo(2560);
      assertThat(reader.warnings())
          .containsExactly(
              "the header says 0.068 s, the file holds 0.058 s: the rest is missing, perhaps a copy"
                  + " that broke off");
      assertThat(Recording.readAll(reader)[1]).isEqualTo(Arrays.copyOf(wanted[1], 2560));
    }
  }

  /** The 36 bits of the length stand at the end of bytes 18 to 25 of the first block. */
  @ParameterizedTest
  @CsvSource({"0, ''", "1, 'the header says 0.000 s, the file holds 0.068 s: all of it is read'"})
  void length_unknownOrWrong_isFound(int stated, String warning) throws IOException {
    byte[] bytes = Recording.fixture("flac-tones.flac");
    ByteBuffer.wrap(bytes).putInt(22, stated);
    try (AudioReader reader = Recording.open(bytes)) {
      assertThat(Recording.readAll(reader)[0]).hasSize(3000);
      assertThat(reader.warnings()).isEqualTo(warning.isEmpty() ? List.of() : List.of(warning));
    }
  }

  @Test
  void sum_thatDiffers_isReported() throws IOException {
    byte[] bytes = Recording.fixture("flac-tones.flac");
    bytes[30] ^= (byte) 1;
    try (AudioReader reader = Recording.open(bytes)) {
      Recording.readAll(reader);
      assertThat(reader.warnings())
          .containsExactly("the samples are not those that were coded, by their MD5 sum");
    }
  }

  @Test
  void file_withoutAWholeFrame_isRefused() {
    byte[] whole = Recording.fixture("flac-tones.flac");
    for (int length : new int[] {4, 20, 42, 200}) {
      assertThatThrownBy(() -> Recording.open(Arrays.copyOf(whole, length)))
          .isInstanceOf(DamagedAudioException.class)
          .hasMessageStartingWith("`take`: expected a FLAC file, found damage: ");
    }
  }
}
