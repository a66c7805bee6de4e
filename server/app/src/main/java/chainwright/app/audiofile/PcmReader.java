package chainwright.app.audiofile;

import java.io.IOException;
import java.util.List;

/** Reads samples that stand frame after frame in a file, as in WAV and AIFF. */
final class PcmReader implements AudioReader {

  private static final int BUFFER_BYTES = 1 << 16;

  private final ByteSource source;
  private final PcmLayout layout;
  private final Warnings warnings;
  private final byte[] bytes;
  private long position;

  PcmReader(ByteSource source, PcmLayout layout, Warnings warnings) throws IOException {
    this.source = source;
    this.layout = layout;
    this.warnings = warnings;
    this.bytes = new byte[BUFFER_BYTES / layout.frameBytes() * layout.frameBytes()];
    source.seek(layout.start());
  }

  @Override
  public AudioFormat format() {
    return layout.format();
  }

  @Override
  public long frames() {
    return layout.frames();
  }

  @Override
  public long position() {
    return position;
  }

  @Override
  public int read(double[][] block, int offset, int frames) throws IOException {
    int channels = layout.format().channels();
    Blocks.requireRoom(block, channels, offset, frames);
    int frameBytes = layout.frameBytes();
    SampleCode code = layout.code();
    int wanted = (int) Math.min(frames, frames() - position);
    for (int done = 0; done < wanted; ) {
      int part = Math.min(wanted - done, bytes.length / frameBytes);
      int got = source.read(bytes, 0, part * frameBytes);
      if (got < part * frameBytes) {
        throw new DamagedAudioException(
            source.name(),
            "the " + frames() + " frames that were there when it was opened",
            "fewer",
            "another program changed it meanwhile; read it again");
      }
      for (int channel = 0; channel < channels; channel++) {
        code.decode(bytes, channel * code.bytes(), frameBytes, block[channel], offset + done, part);
      }
      done += part;
      position += part;
    }
    return wanted;
  }

  @Override
  public void seek(long frame) throws IOException {
    Blocks.requireFrame(frame, frames());
    source.seek(layout.start() + frame * layout.frameBytes());
    position = frame;
  }

  @Override
  public List<String> warnings() {
    return warnings.list();
  }

  @Override
  public boolean isWhole() {
    return !warnings.isLoss();
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}
