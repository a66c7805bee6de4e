package chainwright.app.audiofile;

/** The file is so damaged that nothing can be read from it, or it changed while it was read. */
public final class DamagedAudioException extends AudioFileException {

  DamagedAudioException(String file, String expected, String found, String remedy) {
    super(file, expected, found, remedy);
  }
}
