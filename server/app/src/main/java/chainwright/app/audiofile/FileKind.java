package chainwright.app.audiofile;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The kinds of audio file. */
public enum FileKind {
  /** RIFF WAVE, and RF64 or BW64 where that is too small. */
  WAVE("WAV"),
  /** AIFF, and AIFF-C for samples in floating point. */
  AIFF("AIFF"),
  /** The Free Lossless Audio Codec. */
  FLAC("FLAC"),
  /** Ogg with Vorbis, a lossy code; it is read, not written, and has 16 bits once decoded. */
  OGG_VORBIS("Ogg Vorbis");

  private final String label;

  FileKind(String label) {
    this.label = label;
  }

  /**
   * Returns the kind that a new file's name asks for.
   *
   * @param file the file; its ending counts, in upper or lower case
   * @return the kind, or empty if the ending says none
   */
  public static Optional<FileKind> ofName(Path file) {
    String name = file.toString().toLowerCase(Locale.ROOT);
    for (FileKind kind : values()) {
      if (kind.endings().stream().anyMatch(name::endsWith)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  /**
   * Returns the name that people use.
   *
   * @return such as {@code WAV}
   */
  public String label() {
    return label;
  }

  /**
   * Returns the endings of its files' names, the usual one first.
   *
   * @return such as {@code .wav}
   */
  public List<String> endings() {
    return switch (this) {
      case WAVE -> List.of(".wav", ".wave");
      case AIFF -> List.of(".aiff", ".aif", ".aifc");
      case FLAC -> List.of(".flac");
      case OGG_VORBIS -> List.of(".ogg", ".oga");
    };
  }
}
