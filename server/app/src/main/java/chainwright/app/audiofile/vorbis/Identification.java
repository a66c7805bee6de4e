package chainwright.app.audiofile.vorbis;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * What a stream says of itself in its first packet.
 *
 * <p>Source: Xiph.Org Foundation, "Vorbis I specification", section 4.2.2; from memory.
 *
 * @param sampleRateHz the sample rate [Hz], 0 to 2^32 - 1
 * @param channels how many channels, 1 or 2
 * @param longBlockFrames the size of the long blocks, 64 to 8192
 */
public record Identification(double sampleRateHz, int channels, int longBlockFrames) {

  static final int FIRST_PACKET = 1;
  static final int COMMENT_PACKET = 3;
  static final int SETUP_PACKET = 5;

  private static final int BYTES = 30;

  /** The library takes the channels of a surround stream for one another. */
  private static final int MOST_CHANNELS = 2;

  /** Asks whether a packet is a header of some type. */
  static boolean isHeader(byte[] packet, int type) {
    return packet.length >= 7
        && packet[0] == type
        && new String(packet, 1, 6, StandardCharsets.ISO_8859_1).equals("vorbis");
  }

  /** Reads the first packet. */
  static Identification of(byte[] packet) throws VorbisException {
    if (!isHeader(packet, FIRST_PACKET) || packet.length < BYTES) {
      throw new VorbisException("the first header is missing");
    }
    ByteBuffer in = ByteBuffer.wrap(packet).order(ByteOrder.LITTLE_ENDIAN);
    int channels = packet[11] & 0xff;
    int shortSize = packet[28] & 15;
    int longSize = packet[28] >> 4 & 15;
    if (in.getInt(7) != 0
        || channels == 0
        || shortSize < 6
        || longSize > 13
        || shortSize > longSize
        || (packet[29] & 1) == 0) {
      throw new VorbisException("the first header has a value that is not allowed");
    }
    if (channels > MOST_CHANNELS) {
      throw new VorbisException(
          "it has " + channels + " channels, of which more than two cannot be decoded");
    }
    return new Identification(Integer.toUnsignedLong(in.getInt(12)), channels, 1 << longSize);
  }
}
