package chainwright.app.audiofile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files of libsndfile, and what libsndfile decodes of them, see {@code make.py}. */
class VorbisReadingTest {

  /**
   * Decoders may round differently; libsndfile also rounds where ours cuts off. [steps of 16 bits]
   */
  private static final double ROUNDING_STEPS = 2;

  @Test
  void file_ofAnotherLibrary_isDecodedAsByIt() throws IOException {
    ByteBuffer wanted =
        ByteBuffer.wrap(Recording.fixture("vorbis.s16")).order(ByteOrder.LITTLE_ENDIAN);
    try (AudioReader reader = Recording.open(Recording.fixture("vorbis.ogg"))) {
      assertThat(reader.format())
          .isEqualTo(AudioFormat.of(FileKind.OGG_VORBIS, 44100, 2, SampleKind.ofInteger(16)));
      assertThat(reader.frames()).isEqualTo(3000);
      double[][] samples = Recording.readAll(reader);
      assertThat(reader.warnings()).isEmpty();
      double furthest = 0;
      for (int i = 0; i < 3000; i++) {
        for (double[] plane : samples) {
          furthest = Math.max(furthest, Math.abs(plane[i] * 32768 - wanted.getShort()));
        }
      }
      assertThat(furthest).isLessThanOrEqualTo(ROUNDING_STEPS);
    }
  }

  @ParameterizedTest
  @CsvSource({"vorbis.ogg", "vorbis-long.ogg"})
  void file_readFromAnyFrame_goesOnFromThere(String name) throws IOException {
    try (AudioReader reader = Recording.open(Recording.fixture(name))) {
      double[][] all = Recording.readAll(reader);
      int frames = all[0].length;
      for (int from : new int[] {frames - 1, 0, frames / 2, frames, 700, frames / 3, 2000}) {
        reader.seek(from);
        double[][] rest = Recording.readAll(reader);
        assertThat(rest[0]).as("from %d", from).isEqualTo(Arrays.copyOfRange(all[0], from, frames));
      }
      assertThat(reader.warnings()).isEmpty();
    }
  }

  @Test
  void file_brokenOff_isReadToItsLastWholePage() throws IOException {
    byte[] whole = Recording.fixture("vorbis-long.ogg");
    double[][] all = Recording.readAll(Recording.open(whole));
    try (AudioReader reader = Recording.open(Arrays.copyOf(whole, whole.length - 10))) {
      int frames = (int) reader.frames();
      assertThat(frames).isBetween(10_000, 39_999);
      assertThat(reader.warnings())
          .singleElement()
          .asString()
          .contains("does not say that it ends there: perhaps a copy that broke off");
      assertThat(Recording.readAll(reader)[0]).isEqualTo(Arrays.copyOf(all[0], frames));
    }
  }

  /** Pages of this file have 10240 frames, 1.28 s; a packet in part on the lost one is lost too. */
  @ParameterizedTest
  @CsvSource({"4000, 0, 0.000", "8000, 10240, 1.280"})
  void page_damaged_isSilentAndReportedWithItsTime(int at, int before, String time)
      throws IOException {
    byte[] whole = Recording.fixture("vorbis-long.ogg");
    double[] all = Recording.readAll(Recording.open(whole))[0];
    byte[] damaged = whole.clone();
    damaged[at] ^= (byte) 1;
    try (AudioReader reader = Recording.open(damaged)) {
      double[] read = Recording.readAll(reader)[0];
      assertThat(reader.warnings())
          .singleElement()
          .asString()
          .matches("damaged at " + time + " s: a part is missing; 1\\.[2-6]\\d+ s are silent");
      assertThat(read).hasSameSizeAs(all);
      assertThat(Arrays.copyOf(read, before)).isEqualTo(Arrays.copyOf(all, before));
      int from = before + 13_000;
      assertThat(Arrays.copyOfRange(read, from, 40_000))
          .isEqualTo(Arrays.copyOfRange(all, from, 40_000));
    }
  }

  /** The number of channels is byte 11 of the first packet, which stands on byte 28. */
  @Test
  void file_ofSixChannels_isRefused() {
    byte[] bytes = Recording.fixture("vorbis.ogg");
    bytes[28 + 11] = 6;
    assertThatThrownBy(() -> Recording.open(OggSums.mend(bytes)))
        .isInstanceOf(DamagedAudioException.class)
        .hasMessageContaining("it has 6 channels, of which more than two cannot be decoded");
  }

  @Test
  void ogg_withoutVorbis_isRefused() {
    byte[] page = Arrays.copyOf(Recording.fixture("vorbis.ogg"), 58);
    assertThatThrownBy(() -> Recording.open(page))
        .isInstanceOf(DamagedAudioException.class)
        .hasMessageContaining("the setup header is missing");
    page[30] = 'x';
    assertThatThrownBy(() -> Recording.open(OggSums.mend(page)))
        .isInstanceOf(DamagedAudioException.class)
        .hasMessageContaining("no Vorbis stream begins in it");
  }

  @Test
  void file_ofVorbis_isNotWritten() {
    AudioFormat format = AudioFormat.of(FileKind.OGG_VORBIS, 48000, 2, SampleKind.ofInteger(16));
    assertThatThrownBy(() -> AudioFiles.create(Path.of("no", "out.ogg"), format, false))
        .isInstanceOf(OutputFileException.class)
        .hasMessageContaining("which is only read");
  }
}
