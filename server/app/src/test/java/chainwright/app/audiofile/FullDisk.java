package chainwright.app.audiofile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;

/** A disk that takes so many bytes and no more. */
final class FullDisk implements SeekableByteChannel {

  private final SeekableByteChannel disk;
  private long room;

  FullDisk(SeekableByteChannel disk, long roomBytes) {
    this.disk = disk;
    this.room = roomBytes;
  }

  @Override
  public int write(ByteBuffer from) throws IOException {
    if (from.remaining() > room) {
      throw new IOException("No space left on device");
    }
    room -= from.remaining();
    return disk.write(from);
  }

  @Override
  public int read(ByteBuffer into) throws IOException {
    return disk.read(into);
  }

  @Override
  public long position() throws IOException {
    return disk.position();
  }

  @Override
  public SeekableByteChannel position(long newPosition) throws IOException {
    disk.position(newPosition);
    return this;
  }

  @Override
  public long size() throws IOException {
    return disk.size();
  }

  @Override
  public SeekableByteChannel truncate(long size) throws IOException {
    disk.truncate(size);
    return this;
  }

  @Override
  public boolean isOpen() {
    return disk.isOpen();
  }

  @Override
  public void close() throws IOException {
    disk.close();
  }
}
