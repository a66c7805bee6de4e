package chainwright.app.audiofile;

import chainwright.app.audiofile.bytes.Damage;
import chainwright.app.audiofile.flac.FlacDecoder;
import chainwright.app.audiofile.flac.FlacException;
import chainwright.app.audiofile.flac.StreamInfo;
import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;

/** Reads a FLAC file. */
final class FlacReader implements AudioReader {

  private final ByteSource source;
  private final FlacDecoder decoder;
  private final AudioFormat format;
  private final Warnings warnings;
  private final double step;
  private final Consumer<Damage> damages = this::warn;

  /** The first frame of the block in hand, and how many it has. */
  private long blockStart;

  private int blockFrames;
  private long position;

  private FlacReader(
      ByteSource source, FlacDecoder decoder, AudioFormat format, Warnings warnings) {
    this.source = source;
    this.decoder = decoder;
    this.format = format;
    this.warnings = warnings;
    this.step = 1.0 / (1L << (format.samples().bits() - 1));
  }

  static FlacReader open(ByteSource source, Warnings warnings) throws IOException {
    try {
      FlacDecoder decoder = FlacDecoder.open(source);
      AudioFormat format = format(decoder, source.name());
      checkLength(decoder, warnings);
      return new FlacReader(source, decoder, format, warnings);
    } catch (FlacException e) {
      throw new DamagedAudioException(
          source.name(),
          "a FLAC file",
          "damage: " + e.getMessage(),
          "copy the file again from where it came from");
    }
  }

  private void warn(Damage damage) {
    warnings.addDamage(damage, format.sampleRateHz());
  }

  private static AudioFormat format(FlacDecoder decoder, String file) throws IOException {
    StreamInfo info = decoder.info();
    FormatChecks.requireRate(file, info.sampleRateHz());
    if (info.bits() < 4) {
      throw new UnsupportedAudioException(
          file, "4 to 32 bits", info.bits() + " bits", "the header is damaged");
    }
    return new AudioFormat(
        FileKind.FLAC,
        info.sampleRateHz(),
        info.channels(),
        speakers(decoder.channelMask(), info.channels()),
        SampleKind.ofInteger(info.bits()));
  }

  private static List<Speaker> speakers(int mask, int channels) {
    if (mask == 0) {
      return UsualSpeakers.of(channels);
    }
    List<Speaker> named = Speaker.ofMask(mask);
    return named.size() == channels ? named : List.of();
  }

  private static void checkLength(FlacDecoder decoder, Warnings warnings) {
    StreamInfo info = decoder.info();
    if (info.frames() != 0 && info.frames() != decoder.frames()) {
      String lengths =
          "the header says "
              + Warnings.seconds(info.frames(), info.sampleRateHz())
              + ", the file holds "
              + Warnings.seconds(decoder.frames(), info.sampleRateHz());
      if (decoder.frames() < info.frames()) {
        warnings.addLoss(lengths + Warnings.REST_MISSING);
      } else {
        warnings.add(lengths + ": all of it is read");
      }
    }
  }

  @Override
  public AudioFormat format() {
    return format;
  }

  @Override
  public long frames() {
    return decoder.frames();
  }

  @Override
  public long position() {
    return position;
  }

  @Override
  public int read(double[][] block, int offset, int frames) throws IOException {
    Blocks.requireRoom(block, format.channels(), offset, frames);
    int wanted = (int) Math.min(frames, frames() - position);
    for (int done = 0; done < wanted; ) {
      if (position >= blockStart + blockFrames) {
        blockStart += blockFrames;
        blockFrames = decoder.advance(damages);
      } else {
        int from = (int) (position - blockStart);
        int part = Math.min(wanted - done, blockFrames - from);
        copy(from, block, offset + done, part);
        done += part;
        position += part;
      }
    }
    return wanted;
  }

  private void copy(int from, double[][] block, int offset, int count) {
    long[][] planes = decoder.planes();
    for (int channel = 0; channel < planes.length; channel++) {
      long[] plane = planes[channel];
      double[] into = block[channel];
      for (int i = 0; i < count; i++) {
        into[offset + i] = step * plane[from + i];
      }
    }
  }

  @Override
  public void seek(long frame) throws IOException {
    Blocks.requireFrame(frame, frames());
    if (frame < blockStart || frame > blockStart + blockFrames) {
      blockStart = decoder.seek(frame);
      blockFrames = 0;
    }
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
