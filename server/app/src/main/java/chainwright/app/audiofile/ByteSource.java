package chainwright.app.audiofile;

import chainwright.app.audiofile.bytes.SeekableBytes;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;

/**
 * The bytes of a file, read forwards through a small buffer, from any place.
 *
 * <p>Its size is that of the moment it was opened: a recording may still be growing.
 */
final class ByteSource implements SeekableBytes, AutoCloseable {

  private static final int BUFFER_BYTES = 1 << 16;

  private final SeekableByteChannel channel;
  private final String name;
  private final long size;
  private final ByteBuffer buffer = ByteBuffer.allocate(BUFFER_BYTES).limit(0);

  /** The place in the file of the byte after the buffer's last. */
  private long bufferEnd;

  ByteSource(SeekableByteChannel channel, String name) throws IOException {
    this.channel = channel;
    this.name = name;
    this.size = channel.size();
    channel.position(0);
  }

  /** What messages call the file. */
  String name() {
    return name;
  }

  @Override
  public long size() {
    return size;
  }

  long position() {
    return bufferEnd - buffer.remaining();
  }

  long remaining() {
    return size - position();
  }

  @Override
  public void seek(long position) throws IOException {
    long start = bufferEnd - buffer.limit();
    if (position >= start && position <= bufferEnd) {
      buffer.position((int) (position - start));
    } else {
      channel.position(position);
      buffer.limit(0);
      bufferEnd = position;
    }
  }

  @Override
  public int read(byte[] into, int offset, int length) throws IOException {
    int wanted = (int) Math.min(length, remaining());
    int got = 0;
    while (got < wanted) {
      if (!buffer.hasRemaining() && !fill()) {
        break;
      }
      int part = Math.min(wanted - got, buffer.remaining());
      buffer.get(into, offset + got, part);
      got += part;
    }
    return got;
  }

  /** Takes bytes that must be there. */
  ByteBuffer take(int count, ByteOrder order) throws IOException {
    byte[] bytes = new byte[count];
    int got = read(bytes, 0, count);
    if (got < count) {
      throw new DamagedAudioException(
          name,
          "at least " + (count - got) + " more bytes",
          "the end of the file after " + size + " bytes",
          "copy the file again from where it came from");
    }
    return ByteBuffer.wrap(bytes).order(order);
  }

  /** Takes a mark of four letters. */
  String takeMark() throws IOException {
    return new String(take(4, ByteOrder.BIG_ENDIAN).array(), StandardCharsets.ISO_8859_1);
  }

  private boolean fill() throws IOException {
    buffer.clear();
    int got = channel.read(buffer);
    buffer.flip();
    bufferEnd += Math.max(got, 0);
    return got > 0;
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
