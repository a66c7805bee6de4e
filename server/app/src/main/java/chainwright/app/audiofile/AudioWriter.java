package chainwright.app.audiofile;

import java.io.IOException;

/**
 * Writes the samples of a new audio file, block by block. Not for use by several threads at once.
 *
 * <p>The file comes into being, as a whole, when {@link #finish} returns. Closed before that, or
 * after trouble, it leaves nothing behind:
 *
 * <pre>{@code
 * try (AudioWriter writer = AudioFiles.create(file, format, false)) {
 *   writer.write(block, 0, 4096);
 *   writer.finish();
 * }
 * }</pre>
 */
public interface AudioWriter extends AutoCloseable {

  /**
   * Returns what the samples are.
   *
   * @return the format
   */
  AudioFormat format();

  /**
   * Writes the next block.
   *
   * @param block a plane a channel, full scale 1.0; further planes are left alone
   * @param offset the first frame of the planes to write
   * @param frames how many frames to write; 0 does nothing
   * @throws OutputFileException if it cannot be written, such as when the disk is full; the draft
   *     is gone then, and the writer can only be closed
   * @throws IllegalArgumentException if the block does not have the frames
   * @throws IllegalStateException after {@link #finish} or trouble
   */
  void write(double[][] block, int offset, int frames) throws IOException;

  /**
   * Completes the file and moves it into place.
   *
   * @return what was written
   * @throws OutputFileException if it cannot be; the draft is gone then
   * @throws IllegalStateException when called twice or after trouble
   */
  WriteSummary finish() throws IOException;

  /** Takes back what has not been finished. */
  @Override
  void close() throws IOException;
}
