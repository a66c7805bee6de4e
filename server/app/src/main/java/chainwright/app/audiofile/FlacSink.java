package chainwright.app.audiofile;

import chainwright.app.audiofile.flac.FlacEncoder;
import java.io.IOException;
import java.nio.ByteBuffer;

/** Writes a FLAC file. */
final class FlacSink implements SampleSink {

  private final ByteSink bytes;
  private final FlacEncoder encoder;
  private final IntegerRounding rounding;
  private final long[][] planes;
  private final int channelMask;
  private int waiting;
  private long frames;

  FlacSink(AudioFormat format, ByteSink bytes) throws IOException {
    this.bytes = bytes;
    int bits = format.samples().bits();
    this.encoder = new FlacEncoder((int) format.sampleRateHz(), format.channels(), bits);
    this.rounding = new IntegerRounding(bits);
    this.planes = new long[format.channels()][FlacEncoder.BLOCK_FRAMES];
    boolean isUsual = format.speakers().equals(UsualSpeakers.of(format.channels()));
    this.channelMask = isUsual ? 0 : Speaker.maskOf(format.speakers());
    put(encoder.beginning(channelMask));
  }

  private void put(byte[] all) throws IOException {
    bytes.put(all, 0, all.length);
  }

  @Override
  public void write(double[][] block, int offset, int count) throws IOException {
    if (frames + count > FlacEncoder.MOST_FRAMES) {
      throw new IOException("a FLAC file cannot be longer; write a WAV file");
    }
    for (int done = 0; done < count; ) {
      int part = Math.min(count - done, FlacEncoder.BLOCK_FRAMES - waiting);
      for (int channel = 0; channel < planes.length; channel++) {
        for (int i = 0; i < part; i++) {
          planes[channel][waiting + i] = rounding.round(block[channel][offset + done + i]);
        }
      }
      done += part;
      waiting += part;
      frames += part;
      if (waiting == FlacEncoder.BLOCK_FRAMES) {
        encode();
      }
    }
  }

  private void encode() throws IOException {
    put(encoder.encode(planes, waiting));
    waiting = 0;
  }

  @Override
  public WriteSummary complete() throws IOException {
    if (waiting > 0) {
      encode();
    }
    ByteBuffer beginning = ByteBuffer.wrap(encoder.beginning(channelMask));
    bytes.patch(0, beginning.position(beginning.limit()));
    return new WriteSummary(frames, rounding.held(), rounding.notNumbers());
  }
}
