package chainwright.app.audiofile.bytes;

import java.io.IOException;

/** Bytes that can be read from any place. */
public interface SeekableBytes {

  /**
   * Returns how many bytes there are.
   *
   * @return the size [byte]
   */
  long size();

  /**
   * Goes to a place.
   *
   * @param position the place [byte], 0 to the size
   * @throws IOException if that fails
   */
  void seek(long position) throws IOException;

  /**
   * Reads as many bytes as there are.
   *
   * @param into where to
   * @param offset the first to fill
   * @param length how many to fill
   * @return how many were filled; fewer only at the end
   * @throws IOException if that fails
   */
  int read(byte[] into, int offset, int length) throws IOException;
}
