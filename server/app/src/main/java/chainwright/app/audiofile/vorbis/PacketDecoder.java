package chainwright.app.audiofile.vorbis;

import de.jarnbjo.vorbis.VorbisStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Decodes packets by the library, and gathers the samples of several.
 *
 * <p>A packet's samples overlap with those of the one before it, so the first packet after a place
 * to which one has gone gives none.
 */
final class PacketDecoder {

  private final VorbisStream library = new VorbisStream();
  private final int channels;
  private short[][] planes;
  private int count;
  private boolean isFirst = true;

  /** Hands the headers over; the setup has been checked. */
  PacketDecoder(byte[] identification, byte[] setup, int channels) throws VorbisException {
    this.channels = channels;
    this.planes = new short[channels][1 << 12];
    try {
      library.processPacket(identification);
      library.processPacket(emptyComment());
      library.processPacket(setup);
    } catch (IOException | RuntimeException e) {
      throw new VorbisException("the setup header cannot be read: " + e.getMessage());
    }
  }

  /** The tags of a file are not used, so the library need not read them. */
  private static byte[] emptyComment() {
    byte[] packet = new byte[7 + 4 + 4 + 1];
    packet[0] = Identification.COMMENT_PACKET;
    System.arraycopy("vorbis".getBytes(StandardCharsets.US_ASCII), 0, packet, 1, 6);
    packet[15] = 1;
    return packet;
  }

  /** The samples that have been gathered, 16 bits, a plane a channel; more room than samples. */
  short[][] planes() {
    return planes;
  }

  /** How many samples each plane has. */
  int count() {
    return count;
  }

  /** Forgets the samples. */
  void clear() {
    count = 0;
  }

  /** Makes the next packet the first. */
  void restart() {
    count = 0;
    isFirst = true;
  }

  /** Decodes a packet; false if it cannot be decoded, and then the next one counts as the first. */
  boolean add(byte[] packet) {
    if (packet.length == 0) {
      return true;
    }
    if ((packet[0] & 1) != 0) {
      // A header amid the sound would change how all that follows is decoded.
      return false;
    }
    byte[] samples;
    try {
      samples = library.processPacket(packet);
    } catch (IOException | RuntimeException e) {
      isFirst = true;
      return false;
    }
    if (samples != null && !isFirst) {
      append(samples);
    }
    isFirst = false;
    return true;
  }

  private void append(byte[] samples) {
    int more = samples.length / 2 / channels;
    if (planes[0].length < count + more) {
      for (int channel = 0; channel < channels; channel++) {
        planes[channel] = Arrays.copyOf(planes[channel], 2 * (count + more));
      }
    }
    int at = 0;
    for (int i = count; i < count + more; i++) {
      for (int channel = 0; channel < channels; channel++, at += 2) {
        planes[channel][i] = (short) (samples[at] << 8 | (samples[at + 1] & 0xff));
      }
    }
    count += more;
  }
}
