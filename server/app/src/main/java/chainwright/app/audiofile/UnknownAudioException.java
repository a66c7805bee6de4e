package chainwright.app.audiofile;

/** The file is of no kind that is known here. */
public final class UnknownAudioException extends AudioFileException {

  UnknownAudioException(String file, String expected, String found, String remedy) {
    super(file, expected, found, remedy);
  }
}
