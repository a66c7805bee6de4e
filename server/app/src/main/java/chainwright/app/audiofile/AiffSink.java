package chainwright.app.audiofile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Writes an AIFF file, or an AIFF-C file for samples in floating point. */
final class AiffSink implements SampleSink {

  /** Sizes are signed numbers of 32 bits. */
  static final long LARGEST_BYTES = Integer.MAX_VALUE;

  /** The only version of AIFF-C there is. */
  private static final int VERSION_1 = 0xa280_5140;

  private final ByteSink bytes;
  private final PcmSink samples;
  private final long commonAt;
  private final long dataAt;

  AiffSink(AudioFormat format, ByteSink bytes) throws IOException {
    SampleKind kind = format.samples();
    this.bytes = bytes;
    bytes.put(chunk("FORM", 0, 4).put(ascii(kind.isInteger() ? "AIFF" : "AIFC")));
    if (!kind.isInteger()) {
      bytes.put(chunk("FVER", 4, 4).putInt(VERSION_1));
    }
    this.commonAt = bytes.position() + ChunkWalk.HEADER_BYTES;
    ByteBuffer common =
        chunk("COMM", kind.isInteger() ? 18 : 24, 24)
            .putShort((short) format.channels())
            .putInt(0)
            .putShort((short) kind.bits());
    ExtendedFloat.put(common, format.sampleRateHz());
    if (!kind.isInteger()) {
      // The name in words may be empty; its length's byte is padded to an even count.
      common.put(ascii(kind.bits() == 32 ? "fl32" : "fl64")).putShort((short) 0);
    }
    bytes.put(common);
    bytes.put(chunk("SSND", 8, 8).putLong(0));
    this.dataAt = bytes.position();
    SampleCode code = SampleCode.of(kind, ByteOrder.BIG_ENDIAN, false);
    this.samples = new PcmSink(bytes, code, format.channels());
  }

  @Override
  public void write(double[][] block, int offset, int frames) throws IOException {
    if (bytes.position() + (long) frames * samples.frameBytes() > LARGEST_BYTES) {
      throw new IOException("an AIFF file cannot be larger than 2 GiB; write a WAV file");
    }
    samples.write(block, offset, frames);
  }

  @Override
  public WriteSummary complete() throws IOException {
    long size = samples.size();
    if (size % 2 == 1) {
      bytes.put(new byte[1], 0, 1);
    }
    bytes.patch(4, room(4).putInt((int) (bytes.position() - ChunkWalk.HEADER_BYTES)));
    bytes.patch(commonAt + 2, room(4).putInt((int) samples.frames()));
    bytes.patch(dataAt - 12, room(4).putInt((int) (size + 8)));
    return samples.summary();
  }

  private static ByteBuffer chunk(String mark, int size, int room) {
    return room(ChunkWalk.HEADER_BYTES + room).put(ascii(mark)).putInt(size);
  }

  private static ByteBuffer room(int size) {
    return ByteBuffer.allocate(size).order(ByteOrder.BIG_ENDIAN);
  }

  private static byte[] ascii(String mark) {
    return mark.getBytes(StandardCharsets.US_ASCII);
  }
}
