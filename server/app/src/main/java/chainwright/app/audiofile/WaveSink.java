package chainwright.app.audiofile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Writes a WAV file, which becomes an RF64 file if it grows beyond what sizes of 32 bits can say.
 *
 * <p>Source: EBU Tech 3306, on recording: a chunk {@code JUNK} keeps the room for the sizes of 64
 * bits, which are written at the end; from memory.
 */
final class WaveSink implements SampleSink {

  /** The largest size that 32 bits say; the next one means that it is unknown. */
  static final long LARGEST_BYTES = 0xffff_fffeL;

  private static final int LONG_SIZES_BYTES = 28;
  private static final int UNKNOWN = -1;

  private final AudioFormat format;
  private final SampleCode code;
  private final long largestBytes;
  private final ByteSink bytes;
  private final PcmSink samples;
  private final long factAt;
  private final long dataAt;

  WaveSink(AudioFormat format, ByteSink bytes) throws IOException {
    this(format, bytes, LARGEST_BYTES);
  }

  /** Writes the header of a file that becomes an RF64 file when larger than this. */
  WaveSink(AudioFormat format, ByteSink bytes, long largestBytes) throws IOException {
    SampleKind kind = format.samples();
    this.format = format;
    this.bytes = bytes;
    this.largestBytes = largestBytes;
    this.code = SampleCode.of(kind, ByteOrder.LITTLE_ENDIAN, kind.isInteger() && kind.bits() <= 8);
    bytes.put(chunk("RIFF", 0).put(ascii("WAVE")));
    bytes.put(chunk("JUNK", LONG_SIZES_BYTES).put(new byte[LONG_SIZES_BYTES]));
    bytes.put(formatChunk());
    if (kind.isInteger()) {
      this.factAt = -1;
    } else {
      // Whatever is not plain integers has its length in frames, too.
      this.factAt = bytes.position() + ChunkWalk.HEADER_BYTES;
      bytes.put(chunk("fact", 4).putInt(0));
    }
    bytes.put(chunk("data", 0));
    this.dataAt = bytes.position();
    this.samples = new PcmSink(bytes, code, format.channels());
  }

  @Override
  public void write(double[][] block, int offset, int frames) throws IOException {
    samples.write(block, offset, frames);
  }

  @Override
  public WriteSummary complete() throws IOException {
    long size = samples.size();
    if (size % 2 == 1) {
      bytes.put(new byte[1], 0, 1);
    }
    long riffBytes = bytes.position() - ChunkWalk.HEADER_BYTES;
    boolean isLong = riffBytes > largestBytes;
    if (isLong) {
      bytes.patch(0, room(4).put(ascii("RF64")));
      ByteBuffer sizes = chunk("ds64", LONG_SIZES_BYTES);
      bytes.patch(12, sizes.putLong(riffBytes).putLong(size).putLong(samples.frames()).putInt(0));
    }
    bytes.patch(4, room(4).putInt(isLong ? UNKNOWN : (int) riffBytes));
    if (factAt >= 0) {
      bytes.patch(factAt, room(4).putInt(isLong ? UNKNOWN : (int) samples.frames()));
    }
    bytes.patch(dataAt - 4, room(4).putInt(isLong ? UNKNOWN : (int) size));
    return samples.summary();
  }

  /**
   * The extensible format says what the plain one cannot: which bits count, and which channel is
   * for which speaker.
   */
  private ByteBuffer formatChunk() {
    SampleKind kind = format.samples();
    boolean isExtensible =
        format.channels() > 2
            || kind.bits() != 8 * code.bytes()
            || !format.speakers().equals(Speaker.usual(format.channels()));
    int tag = kind.isInteger() ? WaveFormat.INTEGER_TAG : WaveFormat.FLOAT_TAG;
    int frameBytes = code.bytes() * format.channels();
    int rateHz = (int) format.sampleRateHz();
    ByteBuffer chunk =
        chunk("fmt ", isExtensible ? 40 : kind.isInteger() ? 16 : 18)
            .putShort((short) (isExtensible ? WaveFormat.EXTENSIBLE_TAG : tag))
            .putShort((short) format.channels())
            .putInt(rateHz)
            .putInt(rateHz * frameBytes)
            .putShort((short) frameBytes)
            .putShort((short) (8 * code.bytes()));
    if (isExtensible) {
      chunk
          .putShort((short) 22)
          .putShort((short) kind.bits())
          .putInt(Speaker.maskOf(format.speakers()))
          .putLong(WaveFormat.GUID_MIDDLE << 16 | tag)
          .putLong(WaveFormat.GUID_END);
    } else if (!kind.isInteger()) {
      chunk.putShort((short) 0);
    }
    return chunk;
  }

  private static ByteBuffer chunk(String mark, int size) {
    return room(ChunkWalk.HEADER_BYTES + size + 4).put(ascii(mark)).putInt(size);
  }

  private static ByteBuffer room(int size) {
    return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
  }

  private static byte[] ascii(String mark) {
    return mark.getBytes(StandardCharsets.US_ASCII);
  }
}
