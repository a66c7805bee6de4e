package chainwright.app.audiofile;

/** The file's kind is known, but not the way in which this one stores its samples. */
public final class UnsupportedAudioException extends AudioFileException {

  UnsupportedAudioException(String file, String expected, String found, String remedy) {
    super(file, expected, found, remedy);
  }
}
