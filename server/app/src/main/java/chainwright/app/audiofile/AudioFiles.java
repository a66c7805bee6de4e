package chainwright.app.audiofile;

import chainwright.app.audiofile.flac.FlacDecoder;
import java.io.IOException;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Opens recordings and begins new files. */
public final class AudioFiles {

  private AudioFiles() {}

  /**
   * Opens a recording for reading, by what it holds, whatever its name.
   *
   * @param file the file
   * @return its reader, at the first frame
   * @throws AudioFileException if it is no audio file that can be read; the message says what to do
   * @throws IOException if the disk cannot be read, or there is no such file
   */
  public static AudioReader open(Path file) throws IOException {
    if (Files.isDirectory(file)) {
      throw new UnknownAudioException(
          file.toString(), "an audio file", "a folder", "name a file in it");
    }
    try {
      return open(Files.newByteChannel(file, StandardOpenOption.READ), file.toString());
    } catch (NoSuchFileException e) {
      throw new IOException("`" + file + "` does not exist", e);
    }
  }

  /**
   * Opens a recording from any bytes that can be read.
   *
   * @param bytes the bytes; the reader closes them
   * @param name what messages call them
   * @return their reader, at the first frame
   * @throws AudioFileException if they are no audio file that can be read
   * @throws IOException if the bytes cannot be read
   */
  public static AudioReader open(SeekableByteChannel bytes, String name) throws IOException {
    try {
      return recognise(new ByteSource(bytes, name));
    } catch (IOException | RuntimeException e) {
      bytes.close();
      throw e;
    }
  }

  /**
   * Begins a new file.
   *
   * @param file where it will be
   * @param format what it will hold; integers in AIFF and WAV, or floats
   * @param mayReplace whether a file that is there may be replaced when the new one is complete
   * @return its writer
   * @throws AudioFileException if it is there and must not be replaced, if its kind of file cannot
   *     hold the format, or if nothing can be written there; then nothing has changed
   * @throws IOException if the disk fails
   */
  public static AudioWriter create(Path file, AudioFormat format, boolean mayReplace)
      throws IOException {
    FormatChecks.requireWritable(file.toString(), format);
    OutputDraft draft = OutputDraft.begin(file, mayReplace);
    return DraftedWriter.of(draft, new ByteSink(draft.channel()), format, beginning(format.file()));
  }

  static DraftedWriter.Beginning beginning(FileKind kind) {
    return switch (kind) {
      case WAVE -> WaveSink::new;
      case AIFF -> AiffSink::new;
      case FLAC -> FlacSink::new;
      case OGG_VORBIS ->
          throw new IllegalArgumentException(
              "the kind must be one that is written, but was " + kind);
    };
  }

  private static AudioReader recognise(ByteSource source) throws IOException {
    byte[] start = new byte[12];
    int held = source.read(start, 0, start.length);
    String mark = latin(start, 0);
    String form = latin(start, 8);
    Warnings warnings = new Warnings();
    if (WaveHeader.isAt(mark, form)) {
      return new PcmReader(source, WaveHeader.read(source, warnings), warnings);
    }
    if (AiffHeader.isAt(mark, form)) {
      return new PcmReader(source, AiffHeader.read(source, warnings), warnings);
    }
    if (mark.equals("OggS")) {
      return VorbisReader.open(source, warnings);
    }
    if (FlacDecoder.isFlac(source)) {
      return FlacReader.open(source, warnings);
    }
    throw new UnknownAudioException(
        source.name(),
        "a WAV, AIFF, FLAC or Ogg Vorbis file",
        held == 0 ? "an empty file" : FoundBytes.describe(start, held),
        "export the recording as one of these");
  }

  private static String latin(byte[] bytes, int offset) {
    return new String(bytes, offset, 4, StandardCharsets.ISO_8859_1);
  }
}
