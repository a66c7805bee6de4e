package chainwright.app.audiofile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.jspecify.annotations.Nullable;

/**
 * Finds the samples of a WAV file: RIFF WAVE, or RF64 or BW64 with sizes of 64 bits.
 *
 * <p>Source: IBM and Microsoft, "Multimedia Programming Interface and Data Specifications 1.0"
 * (1991), WAVE; EBU Tech 3306 (RF64) and ITU-R BS.2088 (BW64), chunk {@code ds64}; all from memory.
 */
final class WaveHeader {

  /** What a size says that was not known when the header was written. */
  private static final long UNKNOWN = 0xffff_ffffL;

  private final ByteSource source;
  private final Warnings warnings;
  private final ChunkWalk walk;
  private final boolean isLong;
  private final long statedFileBytes;

  private @Nullable WaveFormat format;
  private long longFileBytes = -1;
  private long longDataBytes = -1;
  private long dataStart = -1;
  private long dataStated;

  private WaveHeader(ByteSource source, Warnings warnings) throws IOException {
    this.source = source;
    this.warnings = warnings;
    source.seek(0);
    this.isLong = !source.takeMark().equals("RIFF");
    this.statedFileBytes = Integer.toUnsignedLong(source.take(4, ByteOrder.LITTLE_ENDIAN).getInt());
    this.walk = new ChunkWalk(source, ByteOrder.LITTLE_ENDIAN, 12);
  }

  /** Asks whether the beginning of a file is that of a WAV file. */
  static boolean isAt(String mark, String form) {
    return (mark.equals("RIFF") || mark.equals("RF64") || mark.equals("BW64"))
        && form.equals("WAVE");
  }

  /** Reads the header of a file of which {@link #isAt} holds. */
  static PcmLayout read(ByteSource source, Warnings warnings) throws IOException {
    return new WaveHeader(source, warnings).read();
  }

  private PcmLayout read() throws IOException {
    while ((format == null || dataStart < 0) && walk.advance()) {
      switch (walk.mark()) {
        case "ds64" -> readLongSizes();
        case "fmt " -> format = WaveFormat.read(walk, source.name(), warnings);
        case "data" -> {
          dataStart = walk.start();
          dataStated = isLong && walk.statedBytes() == UNKNOWN ? longDataBytes : walk.statedBytes();
          if (dataStated > 0) {
            walk.endAt(dataStart + Math.min(dataStated, source.size() - dataStart));
          }
        }
        default -> {
          // Tags, markers and the like say nothing about the samples.
        }
      }
    }
    if (format == null) {
      throw missing("a `fmt ` chunk that says what the samples are");
    }
    if (dataStart < 0) {
      throw missing("a `data` chunk with samples");
    }
    return new PcmLayout(format.format(), format.code(), dataStart, frames(format));
  }

  private DamagedAudioException missing(String what) {
    return new DamagedAudioException(
        source.name(),
        what,
        "none in " + source.size() + " bytes",
        "copy the file again from where it came from, or export it again");
  }

  private void readLongSizes() throws IOException {
    ByteBuffer sizes = walk.head(16);
    if (sizes.remaining() == 16) {
      longFileBytes = sizes.getLong();
      longDataBytes = sizes.getLong();
    }
  }

  private long frames(WaveFormat known) throws IOException {
    int frameBytes = known.code().bytes() * known.format().channels();
    double rate = known.format().sampleRateHz();
    long rest = source.size() - dataStart;
    String held = Warnings.seconds(rest / frameBytes, rate);
    long bytes;
    if (dataStated < 0 || (dataStated == UNKNOWN && !isLong)) {
      bytes = rest;
      warnings.add(
          "the header does not say how long it is, as if the recording had not been ended: all "
              + held
              + " that the file holds are read");
    } else if (dataStated == 0 && rest >= frameBytes && !walk.isChunkAt(dataStart)) {
      bytes = rest;
      warnings.add(
          "the header says 0.000 s, the file holds "
              + held
              + ", as if the recording had not been ended: all of it is read");
    } else if (dataStated > rest) {
      bytes = rest;
      warnings.addLoss(
          "the header says "
              + Warnings.seconds(dataStated / frameBytes, rate)
              + ", the file holds "
              + held
              + Warnings.REST_MISSING);
    } else {
      bytes = dataStated;
      checkAfter(dataStart + bytes);
    }
    if (bytes % frameBytes != 0) {
      warnings.add(
          "the samples end amid a frame: its "
              + bytes % frameBytes
              + " bytes of "
              + frameBytes
              + " are left out");
    }
    return bytes / frameBytes;
  }

  /** Looks at what stands after the samples, and at the size of the whole. */
  private void checkAfter(long end) throws IOException {
    long after = source.size() - end;
    long padding = end - dataStart & 1;
    if (after > ChunkWalk.HEADER_BYTES && !walk.isChunkAt(end + padding) && !walk.isChunkAt(end)) {
      warnings.add(
          "the header says that the samples end "
              + after
              + " bytes before the file does, where no chunk begins: those bytes are left out");
      return;
    }
    long stated = isLong && statedFileBytes == UNKNOWN ? longFileBytes : statedFileBytes;
    long really = source.size() - ChunkWalk.HEADER_BYTES;
    if (Math.abs(stated - really) > 1) {
      warnings.add(
          "the header says that the file has "
              + (stated < 0 ? "an unknown number of" : stated + ChunkWalk.HEADER_BYTES)
              + " bytes, it has "
              + source.size()
              + ": the samples are all there");
    }
  }
}
