package chainwright.notation.catalogue.yaml;

/** Says that a catalogue file is wrong: which file, where in it and why. */
public final class CatalogueException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  /**
   * Makes the exception.
   *
   * @param file the file, such as "stages/bell.yaml"
   * @param path the place in it, such as "settings[1].hard"; empty for the file as a whole
   * @param reason what is wrong, lower case
   */
  public CatalogueException(String file, String path, String reason) {
    super(file + ": " + (path.isEmpty() ? "" : path + ": ") + reason);
  }
}
