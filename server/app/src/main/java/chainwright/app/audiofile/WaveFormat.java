package chainwright.app.audiofile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Map;

/**
 * The {@code fmt } chunk of a WAV file.
 *
 * <p>Source: Microsoft, {@code WAVEFORMATEX} and {@code WAVEFORMATEXTENSIBLE}; "Multiple Channel
 * Audio Data and WAVE Files", from memory.
 *
 * @param format what the samples are
 * @param code how one stands in bytes
 */
record WaveFormat(AudioFormat format, SampleCode code) {

  static final int INTEGER_TAG = 1;
  static final int FLOAT_TAG = 3;
  static final int EXTENSIBLE_TAG = 0xfffe;

  /** What follows the tag in the identifier of an extensible format, as two longs. */
  static final long GUID_MIDDLE = 0x0010_0000_0000L;

  static final long GUID_END = 0x719b_3800_aa00_0080L;

  private static final Map<Integer, String> OTHER_TAGS =
      Map.of(
          2, "ADPCM",
          6, "A-law",
          7, "\u00b5-law",
          0x11, "ADPCM",
          0x50, "MPEG audio",
          0x55, "MPEG audio layer 3",
          0xff, "AAC");

  /** Reads the chunk at which a walk stands. */
  static WaveFormat read(ChunkWalk walk, String file, Warnings warnings) throws IOException {
    ByteBuffer chunk = walk.head(40);
    if (chunk.remaining() < 16) {
      throw new DamagedAudioException(
          file,
          "16 bytes of `fmt ` or more",
          Integer.toString(chunk.remaining()),
          "copy the file again from where it came from, or export it again");
    }
    int tag = Short.toUnsignedInt(chunk.getShort());
    final int channels = Short.toUnsignedInt(chunk.getShort());
    final double rateHz = Integer.toUnsignedLong(chunk.getInt());
    chunk.getInt();
    final int frameBytes = Short.toUnsignedInt(chunk.getShort());
    final int bits = Short.toUnsignedInt(chunk.getShort());
    int validBits = bits;
    int mask = 0;
    if (tag == EXTENSIBLE_TAG && chunk.remaining() >= 24) {
      chunk.getShort();
      validBits = Short.toUnsignedInt(chunk.getShort());
      mask = chunk.getInt();
      tag = tagOf(chunk, file);
    }
    FormatChecks.requireChannels(file, channels);
    FormatChecks.requireRate(file, rateHz);
    SampleCode code = code(tag, bits, validBits, frameBytes, channels, file, warnings);
    AudioFormat format =
        new AudioFormat(FileKind.WAVE, rateHz, channels, speakers(mask, channels), code.kind());
    return new WaveFormat(format, code);
  }

  private static int tagOf(ByteBuffer guid, String file) throws IOException {
    long start = guid.getLong();
    long end = guid.getLong();
    if ((start & ~0xffffL) != GUID_MIDDLE << 16 || end != GUID_END) {
      throw unsupported(file, String.format("the format %016x %016x", start, end));
    }
    return (int) (start & 0xffff);
  }

  private static UnsupportedAudioException unsupported(String file, String found) {
    return new UnsupportedAudioException(
        file,
        "integers of 8, 16, 24 or 32 bits or floats of 32 or 64 bits",
        found,
        "export it again as one of these");
  }

  private static SampleCode code(
      int tag,
      int bits,
      int validBits,
      int frameBytes,
      int channels,
      String file,
      Warnings warnings)
      throws IOException {
    if (tag != INTEGER_TAG && tag != FLOAT_TAG) {
      throw unsupported(file, OTHER_TAGS.getOrDefault(tag, "the format " + tag));
    }
    boolean isInteger = tag == INTEGER_TAG;
    if (isInteger ? bits < 1 || bits > 32 : bits != 32 && bits != 64) {
      throw unsupported(file, (isInteger ? "integers of " : "floats of ") + bits + " bits");
    }
    int bytes = (bits + 7) / 8;
    if (frameBytes != bytes * channels) {
      int each = frameBytes / channels;
      if (isInteger && frameBytes % channels == 0 && each > bytes && each <= 4) {
        warnings.add(
            bits
                + " bits stand in "
                + each
                + " bytes, and it is not said where: they are taken to be the upper ones");
        bytes = each;
      } else {
        warnings.add(
            "the header says that a frame has "
                + frameBytes
                + " bytes, which does not fit "
                + channels
                + " channels of "
                + bits
                + " bits: it is read with "
                + bytes * channels);
      }
    }
    if (validBits > bits) {
      warnings.add(
          "the header says that " + validBits + " bits of " + bits + " count: all are read");
    }
    int counting = isInteger && validBits >= 1 && validBits < bits ? validBits : bits;
    SampleKind kind = isInteger ? SampleKind.ofInteger(counting) : SampleKind.ofFloat(bits);
    return new SampleCode(kind, bytes, ByteOrder.LITTLE_ENDIAN, isInteger && bytes == 1);
  }

  /** Speakers beyond the channels are left out; channels beyond the speakers are for none. */
  private static List<Speaker> speakers(int mask, int channels) {
    if (mask == 0) {
      return Speaker.usual(channels);
    }
    List<Speaker> named = Speaker.ofMask(mask);
    return named.size() < channels ? List.of() : named.subList(0, channels);
  }
}
