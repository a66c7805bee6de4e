package chainwright.app.audiofile;

import java.io.IOException;

/** Writes samples frame after frame, as in WAV and AIFF. */
final class PcmSink {

  private static final int BUFFER_BYTES = 1 << 16;

  private final ByteSink sink;
  private final SampleCode code;
  private final int channels;
  private final IntegerRounding rounding;
  private final byte[] bytes;
  private long frames;

  PcmSink(ByteSink sink, SampleCode code, int channels) {
    this.sink = sink;
    this.code = code;
    this.channels = channels;
    this.rounding = new IntegerRounding(code.kind().bits());
    this.bytes = new byte[BUFFER_BYTES / frameBytes() * frameBytes()];
  }

  int frameBytes() {
    return code.bytes() * channels;
  }

  long frames() {
    return frames;
  }

  /** How many bytes the samples take. */
  long size() {
    return frames * frameBytes();
  }

  void write(double[][] block, int offset, int count) throws IOException {
    for (int done = 0; done < count; ) {
      int part = Math.min(count - done, bytes.length / frameBytes());
      for (int channel = 0; channel < channels; channel++) {
        code.encode(
            block[channel],
            offset + done,
            bytes,
            channel * code.bytes(),
            frameBytes(),
            part,
            rounding);
      }
      sink.put(bytes, 0, part * frameBytes());
      done += part;
      frames += part;
    }
  }

  WriteSummary summary() {
    return new WriteSummary(frames, rounding.held(), rounding.notNumbers());
  }
}
