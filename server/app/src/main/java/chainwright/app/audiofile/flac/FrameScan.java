package chainwright.app.audiofile.flac;

import chainwright.app.audiofile.bytes.SeekableBytes;
import java.io.IOException;

/**
 * Finds frames: the next one, the last one of the file, and the one that holds a sample.
 *
 * <p>A frame counts as found only when all of it could be decoded and its check sums are right.
 * Bytes that look like frames and are none cost time; how much of that is borne is limited.
 */
final class FrameScan {

  /** How much of a file's end is looked through for its last frame, at first. */
  private static final int FIRST_TAIL_BYTES = 1 << 16;

  /** What a frame takes at the least, whose samples are all the same: header, sample, sum. */
  private static final int LEAST_FRAME_BYTES = 10;

  private static final int MOST_BLOCK_FRAMES = 1 << 16;
  private static final long PATIENCE_BYTES = 1L << 24;

  private final SeekableBytes source;
  private final BitReader in;
  private final FrameDecoder decoder;
  private final StreamInfo info;
  private final long start;
  private long patience;

  /** Where the next frame should begin. */
  private long place;

  /** The size of each block but the last, where frames are counted rather than samples. */
  private long fixedBlockFrames;

  /** The number of the file's first sample: not 0 if its beginning was cut away. */
  private long origin;

  private long foundAt;
  private long firstFrame;
  private int blockFrames;
  private String reason = "";

  FrameScan(SeekableBytes source, Metadata metadata) {
    this.source = source;
    this.info = metadata.info();
    this.start = metadata.end();
    this.in = new BitReader(source);
    this.decoder = new FrameDecoder(in, info);
    this.place = start;
    this.patience = PATIENCE_BYTES + 4 * source.size();
  }

  /** The samples of the last block that was found. */
  long[][] planes() {
    return decoder.planes();
  }

  /** The first frame of the last block that was found. */
  long firstFrame() {
    return firstFrame;
  }

  /** The size of the last block that was found. */
  int blockFrames() {
    return blockFrames;
  }

  /** Why a block was not found where it should begin. */
  String reason() {
    return reason;
  }

  /** Finds the length of the file [frames], and goes back to its beginning; -1 without a frame. */
  long measure() throws IOException {
    fixedBlockFrames = info.maxBlockFrames();
    if (!find()) {
      return -1;
    }
    if (info.minBlockFrames() != info.maxBlockFrames()) {
      fixedBlockFrames = blockFrames;
      place = foundAt;
      find();
    }
    origin = firstFrame;
    final long afterFirst = place;
    long end = blockFrames;
    for (long tail = FIRST_TAIL_BYTES; end == blockFrames; tail *= 8) {
      long from = Math.max(afterFirst, source.size() - tail);
      place = from;
      long most = (source.size() - start) / LEAST_FRAME_BYTES * MOST_BLOCK_FRAMES;
      while (find()) {
        long after = firstFrame + blockFrames;
        if (after <= most) {
          end = Math.max(end, after);
        }
      }
      if (from == afterFirst) {
        break;
      }
    }
    place = start;
    return end;
  }

  /** Goes to the next block that begins at a frame or later; false if there is none. */
  boolean advance(long frame, long frames) throws IOException {
    reason = "";
    while (find()) {
      if (firstFrame >= frame && firstFrame + blockFrames <= frames) {
        return true;
      }
      note("a frame's number does not follow on that of the one before");
    }
    return false;
  }

  /** Goes to a block that begins at a frame or before it, and returns its first frame. */
  long seek(long frame, long frames) throws IOException {
    long bestAt = start;
    long best = 0;
    long low = start;
    long high = source.size();
    while (high - low > FIRST_TAIL_BYTES) {
      long middle = low + (high - low) / 2;
      place = middle;
      if (!find() || firstFrame > frame || firstFrame < best) {
        high = middle;
      } else {
        bestAt = foundAt;
        best = firstFrame;
        low = Math.max(place, middle + 1);
      }
    }
    place = bestAt;
    return Math.min(best, frames);
  }

  /** Finds the first whole frame at the place where one should begin, or after it. */
  private boolean find() throws IOException {
    in.seek(place);
    while (patience > 0) {
      long at = in.position();
      try {
        FrameHeader header = decoder.decode();
        foundAt = at;
        place = in.position();
        blockFrames = header.blockFrames();
        firstFrame =
            (header.isVariable() ? header.number() : header.number() * fixedBlockFrames) - origin;
        return true;
      } catch (FlacException e) {
        note(String.valueOf(e.getMessage()));
        patience -= in.bytesSinceMark();
        in.seek(at);
        if (!in.findSync()) {
          return false;
        }
      }
    }
    note("too many bytes only look like frames");
    return false;
  }

  private void note(String trouble) {
    if (reason.isEmpty()) {
      reason = trouble;
    }
  }
}
