package chainwright.app.audiofile;

import java.io.IOException;
import java.util.List;

/** A part of what another reader reads. */
final class Region implements AudioReader {

  private final AudioReader whole;
  private final long from;
  private final long to;

  private Region(AudioReader whole, long from, long to) {
    this.whole = whole;
    this.from = from;
    this.to = to;
  }

  static Region of(AudioReader whole, long from, long to) throws IOException {
    if (from < 0 || from > to || to > whole.frames()) {
      throw new IllegalArgumentException(
          "the part must lie within "
              + whole.frames()
              + " frames, but was from "
              + from
              + " to "
              + to);
    }
    whole.seek(from);
    return new Region(whole, from, to);
  }

  @Override
  public AudioFormat format() {
    return whole.format();
  }

  @Override
  public long frames() {
    return to - from;
  }

  @Override
  public long position() {
    return whole.position() - from;
  }

  @Override
  public int read(double[][] block, int offset, int frames) throws IOException {
    return whole.read(block, offset, (int) Math.min(frames, frames() - position()));
  }

  @Override
  public void seek(long frame) throws IOException {
    Blocks.requireFrame(frame, frames());
    whole.seek(from + frame);
  }

  @Override
  public List<String> warnings() {
    return whole.warnings();
  }

  @Override
  public boolean isWhole() {
    return whole.isWhole();
  }

  @Override
  public void close() throws IOException {
    whole.close();
  }
}
