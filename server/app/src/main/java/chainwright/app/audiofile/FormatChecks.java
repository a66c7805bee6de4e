package chainwright.app.audiofile;

/** What every header has to say before anything is read by it. */
final class FormatChecks {

  private FormatChecks() {}

  /** Throws unless there are as many channels as can be read. */
  static void requireChannels(String file, int channels) throws AudioFileException {
    if (channels < 1 || channels > AudioFormat.MOST_CHANNELS) {
      throw new UnsupportedAudioException(
          file,
          "1 to " + AudioFormat.MOST_CHANNELS + " channels",
          Integer.toString(channels),
          channels < 1 ? "the header is damaged" : "split it into files of fewer channels");
    }
  }

  /** Throws unless the sample rate is one that the processors are made for. */
  static void requireRate(String file, double rateHz) throws AudioFileException {
    if (!(rateHz >= AudioFormat.LOWEST_RATE_HZ && rateHz <= AudioFormat.HIGHEST_RATE_HZ)) {
      throw new UnsupportedAudioException(
          file,
          "a sample rate from 8 kHz to 384 kHz",
          rateHz + " Hz",
          "if that is its rate, convert it to one of these; else the header is damaged");
    }
  }

  /** Throws unless a kind of file can hold a format. */
  static void requireWritable(String file, AudioFormat format) throws AudioFileException {
    if (format.file() == FileKind.OGG_VORBIS) {
      throw new OutputFileException(
          file, "a WAV, AIFF or FLAC file", "Ogg Vorbis", "which is only read; write one of these");
    }
    double rateHz = format.sampleRateHz();
    if (format.file() != FileKind.AIFF && rateHz != Math.rint(rateHz)) {
      throw new OutputFileException(
          file,
          "a sample rate of whole Hz in a " + format.file().label() + " file",
          rateHz + " Hz",
          "convert it, or write an AIFF file");
    }
    if (format.file() == FileKind.FLAC) {
      requireFlac(file, format);
    }
  }

  private static void requireFlac(String file, AudioFormat format) throws AudioFileException {
    SampleKind samples = format.samples();
    if (!samples.isInteger() || samples.bits() < 4 || format.channels() > 8) {
      throw new OutputFileException(
          file,
          "1 to 8 channels of integers of 4 to 32 bits in a FLAC file",
          format.channels() + (format.channels() == 1 ? " channel of " : " channels of ") + samples,
          "write integers, or a WAV file");
    }
  }
}
