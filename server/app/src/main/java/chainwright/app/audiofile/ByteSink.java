package chainwright.app.audiofile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;

/** The bytes of a new file, written forwards through a buffer, with places to come back to. */
final class ByteSink {

  private static final int BUFFER_BYTES = 1 << 16;

  private final SeekableByteChannel channel;
  private final ByteBuffer buffer = ByteBuffer.allocate(BUFFER_BYTES);
  private long flushed;

  ByteSink(SeekableByteChannel channel) {
    this.channel = channel;
  }

  /** How many bytes have been written. */
  long position() {
    return flushed + buffer.position();
  }

  void put(byte[] bytes, int offset, int length) throws IOException {
    for (int done = 0; done < length; ) {
      if (!buffer.hasRemaining()) {
        flush();
      }
      int part = Math.min(length - done, buffer.remaining());
      buffer.put(bytes, offset + done, part);
      done += part;
    }
  }

  void put(ByteBuffer bytes) throws IOException {
    put(bytes.array(), bytes.arrayOffset(), bytes.position());
  }

  /** Writes over bytes that were written before. */
  void patch(long place, ByteBuffer bytes) throws IOException {
    flush();
    channel.position(place);
    drain(bytes.flip());
    channel.position(flushed);
  }

  private void flush() throws IOException {
    flushed += buffer.position();
    drain(buffer.flip());
    buffer.clear();
  }

  private void drain(ByteBuffer bytes) throws IOException {
    while (bytes.hasRemaining()) {
      if (channel.write(bytes) == 0) {
        throw new IOException("nothing more can be written");
      }
    }
  }

  /** Writes what is still in the buffer. */
  void complete() throws IOException {
    flush();
  }
}
