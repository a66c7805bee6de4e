package chainwright.app.audiofile;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * What another reader reads, with silence in place of samples that are no sound: what is no number,
 * infinite, or further than {@value #LARGEST} from 0, which only files of floating point hold.
 *
 * <p>Here alone such samples are kept from the stages, some of which remember what they hear. A
 * sample is counted once, however often it is read.
 */
public final class RepairedReader implements AudioReader {

  /** The largest sample that counts as sound: 200 dB above full scale, where the meters end. */
  public static final double LARGEST = 1e10;

  private final AudioReader source;
  private long count;
  private long first;
  private long last;
  private long furthest;

  /**
   * Begins where the source is.
   *
   * @param source what is read; closing the new reader closes it
   */
  public RepairedReader(AudioReader source) {
    this.source = source;
  }

  @Override
  public AudioFormat format() {
    return source.format();
  }

  @Override
  public long frames() {
    return source.frames();
  }

  @Override
  public long position() {
    return source.position();
  }

  @Override
  public int read(double[][] block, int offset, int frames) throws IOException {
    long start = source.position();
    int filled = source.read(block, offset, frames);
    for (int c = 0; c < format().channels(); c++) {
      double[] plane = block[c];
      for (int i = offset; i < offset + filled; i++) {
        if (!(Math.abs(plane[i]) <= LARGEST)) {
          plane[i] = 0;
          note(start + i - offset);
        }
      }
    }
    furthest = Math.max(furthest, source.position());
    return filled;
  }

  private void note(long frame) {
    if (frame >= furthest) {
      first = count == 0 ? frame : Math.min(first, frame);
      last = Math.max(last, frame);
      count++;
    }
  }

  /**
   * Returns how many samples were replaced up to now, over all channels.
   *
   * @return the number, ≥ 0
   */
  public long repairedCount() {
    return count;
  }

  @Override
  public void seek(long frame) throws IOException {
    source.seek(frame);
  }

  /** Returns what the source says, and when the samples that were replaced come. */
  @Override
  public List<String> warnings() {
    List<String> all = new ArrayList<>(source.warnings());
    if (count > 0) {
      double rateHz = format().sampleRateHz();
      String start = Warnings.seconds(first, rateHz);
      String end = Warnings.seconds(last, rateHz);
      all.add(
          (count == 1 ? "1 sample is" : count + " samples are")
              + " no sound (no number, infinite, or over 200 dB above full scale) and silent here, "
              + (count == 1
                  ? "at " + start
                  : first == last ? "all at " + start : "from " + start + " to " + end));
    }
    return List.copyOf(all);
  }

  @Override
  public boolean isWhole() {
    return source.isWhole() && count == 0;
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}
