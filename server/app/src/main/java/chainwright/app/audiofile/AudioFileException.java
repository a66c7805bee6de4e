package chainwright.app.audiofile;

import java.io.IOException;

/**
 * What is wrong with an audio file, as one sentence for the person who named it: what was expected,
 * what was found and what to do.
 */
public abstract sealed class AudioFileException extends IOException
    permits UnknownAudioException,
        UnsupportedAudioException,
        DamagedAudioException,
        OutputFileException {

  /** Words the message. */
  AudioFileException(String file, String expected, String found, String remedy) {
    super("`" + file + "`: expected " + expected + ", found " + found + "; " + remedy);
  }

  /** Takes a message that is already a sentence. */
  AudioFileException(String message, Throwable cause) {
    super(message, cause);
  }
}
