package chainwright.app.audiofile;

import java.io.IOException;
import java.util.List;

/**
 * Reads the samples of an audio file, block by block. Not for use by several threads at once.
 *
 * <p>A block is an array of planes, one a channel in the order of the file, full scale 1.0.
 */
public interface AudioReader extends AutoCloseable {

  /**
   * Returns what the samples are.
   *
   * @return the format
   */
  AudioFormat format();

  /**
   * Returns the length that the file really holds, whatever its header says.
   *
   * @return the length [frames]
   */
  long frames();

  /**
   * Returns where the next block begins.
   *
   * @return the frame, 0 to {@link #frames()}
   */
  long position();

  /**
   * Reads the next block.
   *
   * @param block a plane a channel; further planes are left alone
   * @param offset the first frame of the planes to fill
   * @param frames how many frames to fill; 0 does nothing
   * @return how many were filled: as many as asked for, fewer only at the end, 0 after it
   * @throws AudioFileException if the file can no longer be read
   * @throws IOException if the disk cannot
   * @throws IllegalArgumentException if the block does not fit
   */
  int read(double[][] block, int offset, int frames) throws IOException;

  /**
   * Goes to a frame, forwards or back.
   *
   * @param frame the frame, 0 to {@link #frames()}
   * @throws AudioFileException if the file can no longer be read
   * @throws IOException if the disk cannot
   * @throws IllegalArgumentException if there is no such frame
   */
  void seek(long frame) throws IOException;

  /**
   * Returns what was wrong with the file and how it is read all the same, up to now.
   *
   * @return a sentence each, such as "the header says 4.000 s, the file holds 3.200 s: ..."
   */
  List<String> warnings();

  /**
   * Asks whether all that the file promises is there and sounds, up to now; {@link #warnings} says
   * what does not. A header that is merely wrong loses nothing.
   *
   * @return whether nothing is missing or silent that should sound
   */
  boolean isWhole();

  /**
   * Returns a part as if it were a whole file. Reading and seeking it moves this reader; closing it
   * closes this reader.
   *
   * @param fromFrame the first frame
   * @param toFrame the frame after the last, not under the first
   * @return the part
   * @throws AudioFileException if the file can no longer be read
   * @throws IOException if the disk cannot
   * @throws IllegalArgumentException if the file has no such part
   */
  default AudioReader region(long fromFrame, long toFrame) throws IOException {
    return Region.of(this, fromFrame, toFrame);
  }

  @Override
  void close() throws IOException;
}
