package chainwright.app.audiofile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * The {@code COMM} chunk of an AIFF or AIFF-C file.
 *
 * @param format what the samples are
 * @param code how one stands in bytes
 * @param frames how many the header says there are, 0 to 2^32 - 1
 */
record AiffCommon(AudioFormat format, SampleCode code, long frames) {

  /** Reads the chunk at which a walk stands. */
  static AiffCommon read(ChunkWalk walk, boolean isCompressed, String file) throws IOException {
    int least = isCompressed ? 22 : 18;
    ByteBuffer chunk = walk.head(least);
    if (chunk.remaining() < least) {
      throw new DamagedAudioException(
          file,
          least + " bytes of `COMM` or more",
          Integer.toString(chunk.remaining()),
          "copy the file again from where it came from, or export it again");
    }
    final int channels = Short.toUnsignedInt(chunk.getShort());
    final long frames = Integer.toUnsignedLong(chunk.getInt());
    final int bits = Short.toUnsignedInt(chunk.getShort());
    final double rateHz = ExtendedFloat.get(chunk);
    FormatChecks.requireChannels(file, channels);
    FormatChecks.requireRate(file, rateHz);
    SampleCode code = code(isCompressed ? mark(chunk) : "NONE", bits, file);
    return new AiffCommon(
        AudioFormat.of(FileKind.AIFF, rateHz, channels, code.kind()), code, frames);
  }

  private static String mark(ByteBuffer chunk) {
    byte[] letters = new byte[4];
    chunk.get(letters);
    return new String(letters, StandardCharsets.ISO_8859_1);
  }

  private static SampleCode code(String compression, int bits, String file) throws IOException {
    return switch (compression) {
      case "NONE", "twos", "in24", "in32" -> integers(bits, ByteOrder.BIG_ENDIAN, file);
      case "sowt" -> integers(bits, ByteOrder.LITTLE_ENDIAN, file);
      case "fl32", "FL32" -> SampleCode.of(SampleKind.ofFloat(32), ByteOrder.BIG_ENDIAN, false);
      case "fl64", "FL64" -> SampleCode.of(SampleKind.ofFloat(64), ByteOrder.BIG_ENDIAN, false);
      default ->
          throw unsupported(
              file, "the compression `" + compression.replaceAll("[^ -~]", "?") + "`");
    };
  }

  private static SampleCode integers(int bits, ByteOrder order, String file) throws IOException {
    if (bits < 1 || bits > 32) {
      throw unsupported(file, "integers of " + bits + " bits");
    }
    return SampleCode.of(SampleKind.ofInteger(bits), order, false);
  }

  private static UnsupportedAudioException unsupported(String file, String found) {
    return new UnsupportedAudioException(
        file,
        "integers of 1 to 32 bits or floats of 32 or 64 bits",
        found,
        "export it again as one of these");
  }
}
