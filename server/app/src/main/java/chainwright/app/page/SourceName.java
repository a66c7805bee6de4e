package chainwright.app.page;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Names a source as briefly as a reader needs it to be recognised. */
public final class SourceName {

  /** Author and title; what follows are chapters; at the end how the source is known. */
  private static final Pattern CITATION =
      Pattern.compile("(?<name>.+?)(?:[:;] .*?| \\(.*?)?(?<known> \\([^()]*\\))?");

  private SourceName() {}

  /**
   * Leaves out chapters and publishers.
   *
   * @param source the source in full, such as "R. Izhaki, Mixing Audio: Concepts, Practices and
   *     Tools (Focal), chapters on equalizers (from memory)"
   * @return such as "R. Izhaki, Mixing Audio (from memory)"
   */
  public static String brief(String source) {
    Matcher matcher = CITATION.matcher(source);
    if (!matcher.matches()) {
      return source;
    }
    String known = matcher.group("known");
    return matcher.group("name") + (known == null ? "" : known);
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
