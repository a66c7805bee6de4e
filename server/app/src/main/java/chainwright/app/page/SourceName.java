package chainwright.app.page;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Names a source as briefly as a reader needs it to be recognised. */
public final class SourceName {

  /** At the end, how the source is known. */
  private static final Pattern KNOWN =
      Pattern.compile(" \\((?:opened|from memory|computed)(?:[^()]|\\([^()]*\\))*\\)$");

  /** Author and title, a title in quotes whole; what follows a colon or a bracket is detail. */
  private static final Pattern NAME =
      Pattern.compile("(?:\"[^\"]*\"|(?![:;] | \\((?!ed\\.\\))).)+");

  private SourceName() {}

  /**
   * Leaves out subtitles, chapters and publishers.
   *
   * @param source the source in full, such as "R. Izhaki, Mixing Audio: Concepts, Practices and
   *     Tools (Focal), chapters on equalizers (from memory)"
   * @return such as "R. Izhaki, Mixing Audio (from memory)"
   */
  public static String brief(String source) {
    Matcher known = KNOWN.matcher(source);
    boolean isSaid = known.find();
    String text = isSaid ? source.substring(0, known.start()) : source;
    Matcher name = NAME.matcher(text);
    return (name.lookingAt() ? name.group() : text) + (isSaid ? known.group() : "");
  }

  /**
   * Says whether a source is what everybody does, and nobody has written.
   *
   * @param source the source in full
   * @return whether it is common practice
   */
  public static boolean isPractice(String source) {
    return source.startsWith("common practice");
  }
}
