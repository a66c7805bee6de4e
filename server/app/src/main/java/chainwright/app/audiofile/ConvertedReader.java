package chainwright.app.audiofile;

import chainwright.dsp.signal.RateConversion;
import chainwright.dsp.signal.RateConverter;
import chainwright.quantity.SampleRate;
import java.io.IOException;
import java.util.List;

/** What another reader reads, at another sample rate, by the usual {@link RateConversion}. */
public final class ConvertedReader implements AudioReader {

  private static final int BLOCK_FRAMES = 4096;

  private final AudioReader source;
  private final AudioFormat format;
  private final RateConversion conversion;
  private final RateConverter converter;
  private final double[][] in;
  private final double[][] out;
  private int ready;
  private int taken;
  private boolean isFinished;
  private long position;

  private ConvertedReader(AudioReader source, AudioFormat format, RateConversion conversion) {
    this.source = source;
    this.format = format;
    this.conversion = conversion;
    converter = conversion.newConverter(format.channels());
    in = new double[format.channels()][BLOCK_FRAMES];
    int room = Math.max(converter.mostOutputFrames(BLOCK_FRAMES), converter.mostFinalFrames());
    out = new double[format.channels()][room];
  }

  /**
   * Converts.
   *
   * @param source what is read, from its start; closing the new reader closes it
   * @param to the sample rate that is wanted, a whole number of hertz
   * @return the reader at the new rate, at the start
   * @throws AudioFileException if the file can no longer be read
   * @throws IOException if the disk cannot
   * @throws IllegalArgumentException if a rate is no whole number of hertz
   */
  public static AudioReader of(AudioReader source, SampleRate to) throws IOException {
    AudioFormat own = source.format();
    AudioFormat format =
        new AudioFormat(own.file(), to.hertz(), own.channels(), own.speakers(), own.samples());
    source.seek(0);
    return new ConvertedReader(
        source, format, RateConversion.design(SampleRate.ofHertz(own.sampleRateHz()), to));
  }

  @Override
  public AudioFormat format() {
    return format;
  }

  @Override
  public long frames() {
    return conversion.outputFrames(source.frames());
  }

  @Override
  public long position() {
    return position;
  }

  @Override
  public int read(double[][] block, int offset, int frames) throws IOException {
    int filled = 0;
    while (filled < frames && (taken < ready || refill())) {
      int count = Math.min(frames - filled, ready - taken);
      for (int c = 0; c < out.length; c++) {
        System.arraycopy(out[c], taken, block[c], offset + filled, count);
      }
      filled += count;
      taken += count;
    }
    position += filled;
    return filled;
  }

  /** Converts what comes next; returns false at the end. */
  private boolean refill() throws IOException {
    taken = 0;
    ready = 0;
    while (ready == 0 && !isFinished) {
      int count = source.read(in, 0, BLOCK_FRAMES);
      isFinished = count == 0;
      ready = isFinished ? converter.finish(out, 0) : converter.process(in, 0, count, out, 0);
    }
    return ready > 0;
  }

  @Override
  public void seek(long frame) throws IOException {
    Blocks.requireFrame(frame, frames());
    source.seek(0);
    converter.reset();
    ready = 0;
    taken = 0;
    isFinished = false;
    position = 0;
    while (position < frame) {
      if (taken == ready && !refill()) {
        return;
      }
      int count = (int) Math.min(frame - position, ready - taken);
      taken += count;
      position += count;
    }
  }

  @Override
  public List<String> warnings() {
    return source.warnings();
  }

  @Override
  public boolean isWhole() {
    return source.isWhole();
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}
