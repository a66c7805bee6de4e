package chainwright.app.audiofile;

import chainwright.app.audiofile.bytes.Damage;
import chainwright.app.audiofile.vorbis.Identification;
import chainwright.app.audiofile.vorbis.VorbisDecoder;
import chainwright.app.audiofile.vorbis.VorbisException;
import java.io.IOException;
import java.util.List;

/** Reads an Ogg Vorbis file. */
final class VorbisReader implements AudioReader {

  private static final double STEP = 1.0 / 32768;

  /** Up to this, going forwards is done by decoding [s]. */
  private static final double SHORT_WAY_SECONDS = 5;

  private final ByteSource source;
  private final VorbisDecoder decoder;
  private final AudioFormat format;
  private final Warnings warnings;
  private long runStart;
  private int runFrames;
  private long position;

  private VorbisReader(
      ByteSource source, VorbisDecoder decoder, AudioFormat format, Warnings warnings) {
    this.source = source;
    this.decoder = decoder;
    this.format = format;
    this.warnings = warnings;
  }

  static VorbisReader open(ByteSource source, Warnings warnings) throws IOException {
    try {
      VorbisDecoder decoder = VorbisDecoder.open(source);
      AudioFormat format = format(decoder.identification(), source.name());
      if (!decoder.isEnded()) {
        warnings.addLoss(
            "the file holds "
                + Warnings.seconds(decoder.frames(), format.sampleRateHz())
                + ", and does not say that it ends there: perhaps a copy that broke off");
      }
      return new VorbisReader(source, decoder, format, warnings);
    } catch (VorbisException e) {
      throw new DamagedAudioException(
          source.name(),
          "an Ogg file with Vorbis",
          "one that cannot be decoded: " + e.getMessage(),
          "copy the file again from where it came from, or export it as WAV or FLAC");
    }
  }

  private static AudioFormat format(Identification said, String file) throws IOException {
    FormatChecks.requireRate(file, said.sampleRateHz());
    return AudioFormat.of(
        FileKind.OGG_VORBIS, said.sampleRateHz(), said.channels(), SampleKind.ofInteger(16));
  }

  private void warn(Damage damage) {
    warnings.addDamage(damage, format.sampleRateHz());
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
      if (position >= runStart + runFrames) {
        runStart += runFrames;
        runFrames = decoder.advance(this::warn);
      } else {
        int from = (int) (position - runStart);
        int part = Math.min(wanted - done, runFrames - from);
        for (int channel = 0; channel < format.channels(); channel++) {
          short[] plane = decoder.planes()[channel];
          int first = decoder.first() + from;
          for (int i = 0; i < part; i++) {
            block[channel][offset + done + i] = STEP * plane[first + i];
          }
        }
        done += part;
        position += part;
      }
    }
    return wanted;
  }

  @Override
  public void seek(long frame) throws IOException {
    Blocks.requireFrame(frame, frames());
    boolean isNear =
        frame >= runStart
            && frame - runStart - runFrames <= SHORT_WAY_SECONDS * format.sampleRateHz();
    if (!isNear) {
      runStart = decoder.seek(frame);
      runFrames = 0;
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
