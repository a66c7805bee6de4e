package chainwright.app.audiofile.vorbis;

import chainwright.app.audiofile.bytes.Damage;
import chainwright.app.audiofile.bytes.SeekableBytes;
import java.io.IOException;
import java.util.function.Consumer;

/**
 * Decodes the first Vorbis stream of an Ogg file, page after page.
 *
 * <p>The numbers on the pages say where in the stream their samples belong. Where fewer can be
 * decoded, the rest is silent, so that what comes after it stays in time, and is reported. Not for
 * use by several threads at once.
 */
public final class VorbisDecoder {

  private static final int SILENT_FRAMES = 4096;

  private final OggPages pages;
  private final Packets packets = new Packets();
  private final StreamStart stream;
  private final PacketDecoder decoder;
  private final StreamLength length;
  private final short[][] silence;

  private short[][] planes;
  private long position;

  /** How many silent frames come before the ones that are decoded. */
  private long silent;

  private int decoded;
  private int decodedFrom;
  private String trouble = "";

  private VorbisDecoder(OggPages pages, StreamStart stream, PacketDecoder decoder)
      throws IOException {
    this.pages = pages;
    this.stream = stream;
    this.decoder = decoder;
    this.length = StreamLength.measure(pages, stream, decoder);
    this.silence = new short[stream.identification().channels()][SILENT_FRAMES];
    this.planes = silence;
    rewind();
  }

  /**
   * Opens a file.
   *
   * @param source its bytes
   * @return the decoder, at the first frame
   * @throws VorbisException if it is no Ogg file with Vorbis that can be decoded
   * @throws IOException if it cannot be read
   */
  public static VorbisDecoder open(SeekableBytes source) throws IOException {
    OggPages pages = new OggPages(source);
    StreamStart stream = StreamStart.read(pages, source.size());
    return new VorbisDecoder(pages, stream, stream.decoder());
  }

  /**
   * Returns what the stream says of itself.
   *
   * @return its rate and channels
   */
  public Identification identification() {
    return stream.identification();
  }

  /**
   * Returns the length that the file holds.
   *
   * @return the length [frames]
   */
  public long frames() {
    return length.frames();
  }

  /**
   * Asks whether the file goes on to the end of its stream.
   *
   * @return false if it was broken off
   */
  public boolean isEnded() {
    return length.isEnded();
  }

  /**
   * Decodes the next run of frames.
   *
   * @param damages is told what could not be decoded
   * @return how many there are, which are the {@link #planes} from {@link #first} on; 0 at the end
   * @throws IOException if the file cannot be read
   */
  public int advance(Consumer<Damage> damages) throws IOException {
    while (silent == 0 && decoded == 0) {
      if (position >= frames() || !decodePage(damages)) {
        long rest = frames() - position;
        if (rest <= 0) {
          return 0;
        }
        silent = rest;
        report(damages, rest);
      }
    }
    if (silent > 0) {
      planes = silence;
      int count = (int) Math.min(silent, SILENT_FRAMES);
      silent -= count;
      position += count;
      return count;
    }
    planes = decoder.planes();
    int count = decoded;
    decoded = 0;
    position += count;
    return count;
  }

  private void report(Consumer<Damage> damages, long frames) {
    damages.accept(new Damage(position, frames, trouble.isEmpty() ? "a part is missing" : trouble));
    trouble = "";
  }

  /** Decodes the packets that end on the next page; false if there is no further one. */
  private boolean decodePage(Consumer<Damage> damages) throws IOException {
    if (!nextPage()) {
      return false;
    }
    decoder.clear();
    decodePackets();
    int count = decoder.count();
    decodedFrom = 0;
    long wanted = count;
    if (pages.granule() != -1) {
      wanted = pages.granule() - length.origin() - position;
    }
    if (wanted > count) {
      // Never more than the file's own length.
      silent = Math.min(wanted, frames() - position) - count;
      silent = Math.max(silent, 0);
      if (silent > 0) {
        report(damages, silent);
      }
    } else if (wanted >= 0 && pages.isLast()) {
      // The number of the last page cuts off its end.
      count = (int) wanted;
    }
    // Samples before the first are there to overlap with.
    if (position < 0) {
      decodedFrom = (int) Math.min(-position, count);
      position += decodedFrom;
    }
    decoded = (int) Math.max(Math.min(count - decodedFrom, frames() - position - silent), 0);
    return true;
  }

  private boolean nextPage() throws IOException {
    while (pages.advance()) {
      if (pages.serial() == stream.serial()) {
        return true;
      }
    }
    return false;
  }

  private void decodePackets() {
    for (byte[] packet : packets.add(pages)) {
      if (!decoder.add(packet)) {
        trouble = "a packet cannot be decoded";
      }
    }
  }

  private void rewind() {
    pages.seek(stream.audioStart());
    packets.clear();
    decoder.restart();
    position = -length.leadIn();
    silent = 0;
    decoded = 0;
  }

  /**
   * Returns the samples of the last run.
   *
   * @return a plane a channel, full scale 32768; filled again by the next
   */
  public short[][] planes() {
    return planes;
  }

  /**
   * Returns where in the planes the last run begins.
   *
   * @return the index of its first frame
   */
  public int first() {
    return planes == silence ? 0 : decodedFrom;
  }

  /**
   * Goes to a frame or a little before it.
   *
   * @param frame the frame, 0 to the length
   * @return the first frame of the run that comes next, at most the one asked for
   * @throws IOException if the file cannot be read
   */
  public long seek(long frame) throws IOException {
    long place = -1;
    pages.seek(stream.audioStart());
    while (nextPage() && pages.granule() - length.origin() <= frame) {
      if (pages.granule() >= length.origin() && isWholeAtItsEnd(pages)) {
        place = pages.start();
      }
    }
    rewind();
    if (place < 0) {
      return 0;
    }
    pages.seek(place);
    if (nextPage()) {
      decodePackets();
      decoder.clear();
      position = pages.granule() - length.origin();
    }
    return position;
  }

  /** Asks whether the last packet that ends on the page also begins there. */
  private static boolean isWholeAtItsEnd(OggPages page) {
    long ends = page.pieces().stream().filter(OggPages.Piece::isEnd).count();
    return ends > 1 || (ends == 1 && !page.isContinued());
  }
}
