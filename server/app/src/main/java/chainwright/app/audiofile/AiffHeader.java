package chainwright.app.audiofile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.jspecify.annotations.Nullable;

/**
 * Finds the samples of an AIFF or AIFF-C file.
 *
 * <p>Source: Apple Computer, "Audio Interchange File Format: AIFF", version 1.3 (1989), and
 * "AIFF-C" (draft of 1991); from memory.
 */
final class AiffHeader {

  private static final long UNKNOWN = 0xffff_ffffL;

  private final ByteSource source;
  private final Warnings warnings;

  private @Nullable AiffCommon common;
  private long dataStart = -1;
  private long dataStated;

  private AiffHeader(ByteSource source, Warnings warnings) {
    this.source = source;
    this.warnings = warnings;
  }

  /** Asks whether the beginning of a file is that of an AIFF file. */
  static boolean isAt(String mark, String form) {
    return mark.equals("FORM") && (form.equals("AIFF") || form.equals("AIFC"));
  }

  /** Reads the header of a file of which {@link #isAt} holds. */
  static PcmLayout read(ByteSource source, Warnings warnings) throws IOException {
    return new AiffHeader(source, warnings).read();
  }

  private PcmLayout read() throws IOException {
    source.seek(8);
    boolean isCompressed = source.takeMark().equals("AIFC");
    ChunkWalk walk = new ChunkWalk(source, ByteOrder.BIG_ENDIAN, 12);
    while ((common == null || dataStart < 0) && walk.advance()) {
      if (walk.mark().equals("COMM")) {
        common = AiffCommon.read(walk, isCompressed, source.name());
      } else if (walk.mark().equals("SSND") && walk.heldBytes() >= 8) {
        ByteBuffer head = walk.head(8);
        long offset = Integer.toUnsignedLong(head.getInt());
        dataStart = Math.min(walk.start() + 8 + offset, source.size());
        dataStated =
            walk.statedBytes() == UNKNOWN ? UNKNOWN : Math.max(walk.statedBytes() - 8 - offset, 0);
      }
    }
    if (common == null) {
      throw missing("a `COMM` chunk that says what the samples are");
    }
    if (dataStart < 0 && common.frames() > 0) {
      throw missing("an `SSND` chunk with samples");
    }
    // A file without samples need not have a chunk for them.
    long start = Math.max(dataStart, 0);
    return new PcmLayout(common.format(), common.code(), start, frames(common));
  }

  private DamagedAudioException missing(String what) {
    return new DamagedAudioException(
        source.name(),
        what,
        "none in " + source.size() + " bytes",
        "copy the file again from where it came from, or export it again");
  }

  private long frames(AiffCommon known) {
    if (dataStart < 0) {
      return 0;
    }
    int frameBytes = known.code().bytes() * known.format().channels();
    double rate = known.format().sampleRateHz();
    long rest = (source.size() - dataStart) / frameBytes;
    long inChunk = dataStated == UNKNOWN || dataStated == 0 ? rest : dataStated / frameBytes;
    long held = Math.min(inChunk, rest);
    long stated = known.frames();
    if (stated == held) {
      return held;
    }
    if (stated > 0 && stated < held) {
      warnings.add(
          "the header says "
              + Warnings.seconds(stated, rate)
              + ", the file holds "
              + Warnings.seconds(held, rate)
              + ": what comes after is left out");
      return stated;
    }
    String lengths =
        "the header says "
            + Warnings.seconds(stated, rate)
            + ", the file holds "
            + Warnings.seconds(held, rate);
    if (stated == 0) {
      warnings.add(lengths + ", as if the recording had not been ended: all of it is read");
    } else {
      warnings.addLoss(lengths + Warnings.REST_MISSING);
    }
    return held;
  }
}
