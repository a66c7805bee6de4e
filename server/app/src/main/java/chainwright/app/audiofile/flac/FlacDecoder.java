package chainwright.app.audiofile.flac;

import chainwright.app.audiofile.bytes.Damage;
import chainwright.app.audiofile.bytes.SeekableBytes;
import java.io.IOException;
import java.util.Arrays;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Decodes a FLAC file, block after block.
 *
 * <p>The length is what the file's last whole frame says, not what its beginning claims. A part
 * that cannot be decoded is silent in its place, so that what comes after it stays in time, and is
 * reported. Not for use by several threads at once.
 */
public final class FlacDecoder {

  private static final int SILENT_FRAMES = 4096;

  private final FrameScan scan;
  private final StreamInfo info;
  private final int channelMask;
  private final long frames;

  /** Null when a part was left out: what the file says cannot be compared then. */
  private @Nullable SampleSum sum;

  private long[][] planes;
  private long position;
  private long silentUntil;
  private boolean isFrameWaiting;

  private FlacDecoder(FrameScan scan, Metadata metadata, long frames) {
    this.scan = scan;
    this.info = metadata.info();
    this.channelMask = metadata.channelMask();
    this.frames = frames;
    this.planes = new long[info.channels()][0];
    this.sum = info.md5().isEmpty() ? null : new SampleSum(info.bits());
  }

  /**
   * Asks whether bytes are meant to be a FLAC file, perhaps after a tag.
   *
   * @param source the bytes
   * @return whether they begin like one
   * @throws IOException if they cannot be read
   */
  public static boolean isFlac(SeekableBytes source) throws IOException {
    return Metadata.findMark(source) >= 0;
  }

  /**
   * Opens a file.
   *
   * @param source its bytes
   * @return the decoder, at the first frame
   * @throws FlacException if it is no FLAC file, or not one frame of it can be decoded
   * @throws IOException if it cannot be read
   */
  public static FlacDecoder open(SeekableBytes source) throws IOException {
    long mark = Metadata.findMark(source);
    if (mark < 0) {
      throw new FlacException("the mark of a FLAC file is missing");
    }
    Metadata metadata = Metadata.read(source, mark);
    FrameScan scan = new FrameScan(source, metadata);
    long frames = scan.measure();
    if (frames < 0) {
      if (metadata.info().frames() > 0 || metadata.end() < source.size()) {
        throw new FlacException("no frame of it can be decoded");
      }
      frames = 0;
    }
    return new FlacDecoder(scan, metadata, frames);
  }

  /**
   * Returns what the file says of itself.
   *
   * @return what its samples are; its length may be wrong
   */
  public StreamInfo info() {
    return info;
  }

  /**
   * Returns the speakers.
   *
   * @return a mask as in {@code WAVEFORMATEXTENSIBLE}, or 0 if the order of section 9.1.3 holds
   */
  public int channelMask() {
    return channelMask;
  }

  /**
   * Returns the length that the file holds.
   *
   * @return the length [frames]
   */
  public long frames() {
    return frames;
  }

  /**
   * Decodes the next block.
   *
   * @param damages is told what could not be decoded
   * @return how many frames it has, which are the first ones of {@link #planes}; 0 at the end
   * @throws IOException if the file cannot be read
   */
  public int advance(Consumer<Damage> damages) throws IOException {
    if (position >= frames) {
      return 0;
    }
    if (position >= silentUntil && !isFrameWaiting) {
      findFrame(damages);
    }
    int count;
    if (position < silentUntil) {
      count = (int) Math.min(SILENT_FRAMES, silentUntil - position);
      fillWithSilence(count);
    } else {
      isFrameWaiting = false;
      planes = scan.planes();
      count = scan.blockFrames();
      if (sum != null) {
        sum.add(planes, count);
      }
    }
    position += count;
    if (position >= frames) {
      compareSum(damages);
    }
    return count;
  }

  private void findFrame(Consumer<Damage> damages) throws IOException {
    boolean isFound = scan.advance(position, frames);
    isFrameWaiting = isFound;
    silentUntil = isFound ? scan.firstFrame() : frames;
    if (silentUntil > position) {
      sum = null;
      damages.accept(new Damage(position, silentUntil - position, scan.reason()));
    }
  }

  private void fillWithSilence(int count) {
    if (planes == scan.planes() || planes[0].length < count) {
      planes = new long[info.channels()][SILENT_FRAMES];
    }
    for (long[] plane : planes) {
      Arrays.fill(plane, 0, count, 0);
    }
  }

  private void compareSum(Consumer<Damage> damages) {
    if (sum != null && !sum.digits().equals(info.md5())) {
      damages.accept(
          new Damage(0, 0, "the samples are not those that were coded, by their MD5 sum"));
    }
    sum = null;
  }

  /**
   * Returns the samples of the last block.
   *
   * @return a plane a channel, with integers of as many bits as the file says; the decoder fills
   *     them again when it advances
   */
  public long[][] planes() {
    return planes;
  }

  /**
   * Goes to a block that holds a frame, or begins before it.
   *
   * @param frame the frame, 0 to the length
   * @return the first frame of the block that comes next, at most the one asked for
   * @throws IOException if the file cannot be read
   */
  public long seek(long frame) throws IOException {
    position = scan.seek(frame, frames);
    silentUntil = position;
    isFrameWaiting = false;
    sum = null;
    return position;
  }
}
