package chainwright.notation.catalogue;

/**
 * Where a statement comes from.
 *
 * @param key the short key, such as "SEN"
 * @param text the citation, such as an author, a title and a clause; for {@code CP} it is "common
 *     practice, no source"
 * @param howKnown how the catalogue knows it: "opened", "from memory", "computed", "none" …
 */
public record Citation(String key, String text, String howKnown) {

  /**
   * Returns the citation as a reader should see it, with the way it is known where that matters.
   *
   * @return such as "common practice, no source"
   */
  public String spelt() {
    boolean isSaid = howKnown.isEmpty() || howKnown.equals("none") || text.startsWith(howKnown);
    return isSaid ? text : text + " (" + howKnown + ")";
  }
}
