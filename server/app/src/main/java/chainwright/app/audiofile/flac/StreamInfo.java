package chainwright.app.audiofile.flac;

import java.nio.ByteBuffer;
import java.util.HexFormat;

/**
 * What a file says of itself at the beginning. It may be wrong.
 *
 * <p>Source: RFC 9639, section 8.2.
 *
 * @param minBlockFrames the smallest block but the last [frames], 0 to 65535
 * @param maxBlockFrames the largest block [frames], 0 to 65535
 * @param minFrameBytes the smallest frame [byte], 0 if it is not known
 * @param maxFrameBytes the largest frame [byte], 0 if it is not known
 * @param sampleRateHz the sample rate [Hz], 0 to 1048575
 * @param channels how many channels, 1 to 8
 * @param bits how many bits a sample has, 1 to 32; fewer than 4 are not allowed
 * @param frames the length [frames], 0 if it is not known
 * @param md5 the check sum of the samples, 32 digits, or empty if it is not known
 */
public record StreamInfo(
    int minBlockFrames,
    int maxBlockFrames,
    int minFrameBytes,
    int maxFrameBytes,
    int sampleRateHz,
    int channels,
    int bits,
    long frames,
    String md5) {

  /** How many bytes it takes. */
  static final int BYTES = 34;

  private static final HexFormat HEX = HexFormat.of();

  /** Reads it. */
  static StreamInfo of(byte[] bytes) {
    ByteBuffer in = ByteBuffer.wrap(bytes);
    final int minBlock = Short.toUnsignedInt(in.getShort());
    final int maxBlock = Short.toUnsignedInt(in.getShort());
    final int minFrame = in.getInt(4) >>> 8;
    final int maxFrame = in.getInt(7) >>> 8;
    // 20 bits of rate, 3 of channels less 1, 5 of bits less 1, 36 of frames.
    long packed = in.getLong(10);
    String md5 = HEX.formatHex(bytes, 18, BYTES);
    return new StreamInfo(
        minBlock,
        maxBlock,
        minFrame,
        maxFrame,
        (int) (packed >>> 44),
        (int) (packed >>> 41 & 7) + 1,
        (int) (packed >>> 36 & 31) + 1,
        packed & 0xf_ffff_ffffL,
        md5.equals("0".repeat(32)) ? "" : md5);
  }

  /** Writes it. */
  byte[] toBytes() {
    ByteBuffer out = ByteBuffer.allocate(BYTES);
    out.putShort((short) minBlockFrames).putShort((short) maxBlockFrames);
    out.put((byte) (minFrameBytes >> 16)).putShort((short) minFrameBytes);
    out.put((byte) (maxFrameBytes >> 16)).putShort((short) maxFrameBytes);
    long packed = (long) sampleRateHz << 44 | (channels - 1L) << 41 | (bits - 1L) << 36 | frames;
    return out.putLong(packed).put(HEX.parseHex(md5.isEmpty() ? "0".repeat(32) : md5)).array();
  }
}
