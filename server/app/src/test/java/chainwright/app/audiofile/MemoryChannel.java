package chainwright.app.audiofile;

import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.util.Arrays;

/** A file in memory, which may be full. */
final class MemoryChannel implements SeekableByteChannel {

  private byte[] bytes;
  private int size;
  private int position;
  private boolean isOpen = true;

  MemoryChannel(byte[] bytes) {
    this.bytes = bytes.clone();
    this.size = bytes.length;
  }

  byte[] content() {
    return Arrays.copyOf(bytes, size);
  }

  @Override
  public int read(ByteBuffer into) {
    if (position >= size) {
      return -1;
    }
    int count = Math.min(into.remaining(), size - position);
    into.put(bytes, position, count);
    position += count;
    return count;
  }

  @Override
  public int write(ByteBuffer from) {
    int count = from.remaining();
    if (position + count > bytes.length) {
      bytes = Arrays.copyOf(bytes, 2 * (position + count));
    }
    from.get(bytes, position, count);
    position += count;
    size = Math.max(size, position);
    return count;
  }

  @Override
  public long position() {
    return position;
  }

  @Override
  public SeekableByteChannel position(long newPosition) {
    position = (int) Math.min(newPosition, Integer.MAX_VALUE);
    return this;
  }

  @Override
  public long size() {
    return size;
  }

  @Override
  public SeekableByteChannel truncate(long newSize) {
    throw new UnsupportedOperationException();
  }

  @Override
  public boolean isOpen() {
    return isOpen;
  }

  @Override
  public void close() {
    isOpen = false;
  }
}
