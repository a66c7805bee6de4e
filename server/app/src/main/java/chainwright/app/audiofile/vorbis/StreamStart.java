package chainwright.app.audiofile.vorbis;

import java.io.IOException;
import java.util.List;

/** The headers of a stream, read and checked. */
final class StreamStart {

  private final Identification identification;
  private final int serial;
  private final long audioStart;
  private final byte[] first;
  private final byte[] setup;
  private final long sourceBytes;
  private final int lastSequence;

  private StreamStart(
      Identification identification,
      int serial,
      long audioStart,
      byte[] first,
      byte[] setup,
      long sourceBytes,
      int lastSequence) {
    this.identification = identification;
    this.serial = serial;
    this.audioStart = audioStart;
    this.first = first;
    this.setup = setup;
    this.sourceBytes = sourceBytes;
    this.lastSequence = lastSequence;
  }

  /** Reads the headers of the first Vorbis stream. */
  static StreamStart read(OggPages pages, long sourceBytes) throws IOException {
    pages.seek(0);
    Packets packets = new Packets();
    byte[] first = new byte[0];
    while (first.length == 0) {
      // All streams begin before any of them goes on.
      if (!pages.advance() || !pages.isFirst()) {
        throw new VorbisException("no Vorbis stream begins in it");
      }
      List<byte[]> begun = packets.add(pages);
      if (begun.size() == 1 && Identification.isHeader(begun.get(0), Identification.FIRST_PACKET)) {
        first = begun.get(0);
      } else {
        packets.clear();
      }
    }
    Identification identification = Identification.of(first);
    int serial = pages.serial();
    while (pages.advance()) {
      if (pages.serial() == serial) {
        for (byte[] packet : packets.add(pages)) {
          if (Identification.isHeader(packet, Identification.SETUP_PACKET)) {
            SetupCheck.require(packet);
            return new StreamStart(
                identification, serial, pages.next(), first, packet, sourceBytes, pages.sequence());
          }
        }
      }
    }
    throw new VorbisException("the setup header is missing");
  }

  Identification identification() {
    return identification;
  }

  int serial() {
    return serial;
  }

  /** Where the first page with sound begins: no packet of sound stands on a page with a header. */
  long audioStart() {
    return audioStart;
  }

  long sourceBytes() {
    return sourceBytes;
  }

  /** The number of the last page with a header; the first one with sound has the next. */
  int lastSequence() {
    return lastSequence;
  }

  /** A decoder that has the headers. */
  PacketDecoder decoder() throws VorbisException {
    return new PacketDecoder(first, setup, identification.channels());
  }
}
