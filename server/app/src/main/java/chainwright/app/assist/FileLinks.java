package chainwright.app.assist;

import chainwright.notation.model.Definition;
import chainwright.notation.project.SourceFile;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Finds the files that a file names: its imports and its takes. */
public final class FileLinks {

  /**
   * A file that is named.
   *
   * @param span where its path stands, from the file's start, without the quotes
   * @param key the other file's key
   * @param exists whether it is there
   * @param says what it is, in words
   */
  public record Link(TextSpan span, String key, boolean exists, String says) {}

  private FileLinks() {}

  /**
   * Finds the links of a file.
   *
   * @param file the file
   * @param exists tells by its key whether a file is there
   * @return the links, in the order of the text
   */
  public static List<Link> of(SourceFile file, Predicate<String> exists) {
    List<Link> links = new ArrayList<>();
    for (int i = 0; i < file.sections().size(); i++) {
      int start = file.tree().startOf(i);
      Definition definition = file.sections().get(i).definition().orElse(null);
      if (definition instanceof Definition.Import found) {
        links.add(
            link(file, found.path(), found.pathSpan().plus(start), "What is defined in", exists));
      } else if (definition instanceof Definition.Track track) {
        track
            .declarations()
            .take()
            .ifPresent(
                take ->
                    links.add(
                        link(
                            file,
                            take.file(),
                            take.fileSpan().plus(start),
                            "The recording",
                            exists)));
      }
    }
    return links;
  }

  private static Link link(
      SourceFile file, String path, TextSpan quoted, String what, Predicate<String> exists) {
    String key = file.resolve(path);
    boolean isThere = exists.test(key);
    String says = what + " " + key + (isThere ? "" : ", which is not there");
    return new Link(withoutQuotes(quoted, file.tree().text()), key, isThere, says);
  }

  private static TextSpan withoutQuotes(TextSpan span, String text) {
    boolean isQuoted = span.length() > 2 && !Character.isLetterOrDigit(text.charAt(span.start()));
    boolean isClosed = isQuoted && "\"\u201d\u201c\u201e".indexOf(text.charAt(span.end() - 1)) >= 0;
    return isClosed ? new TextSpan(span.start() + 1, span.end() - 1) : span;
  }
}
