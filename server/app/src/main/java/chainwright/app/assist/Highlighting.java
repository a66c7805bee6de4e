package chainwright.app.assist;

import chainwright.notation.diagnostic.Place;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.SyntaxElement;
import chainwright.notation.syntax.SyntaxKind;
import chainwright.notation.syntax.SyntaxNode;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds what belongs together with the place of the caret in one file. */
public final class Highlighting {

  /** What a stretch is. */
  public enum Kind {
    /** Where a name is given. */
    DEFINITION,
    /** Where it is used. */
    USE,
    /** A brace of a pair. */
    BRACE
  }

  /**
   * A stretch to be highlighted.
   *
   * @param kind what it is
   * @param span where it stands, from the file's start
   */
  public record Mark(Kind kind, TextSpan span) {}

  private Highlighting() {}

  /**
   * Finds the stretches that belong to a place.
   *
   * @param names what the names mean
   * @param file the file
   * @param offset the place, from the file's start
   * @return both braces where the caret touches one; else each mention of the name there, in the
   *     order of the text; empty where neither stands
   */
  public static List<Mark> at(Names names, SourceFile file, int offset) {
    List<Mark> braces = new ArrayList<>();
    int index = file.tree().sectionAt(offset);
    int start = file.tree().startOf(index);
    Section section = file.tree().sections().get(index);
    braces(section.root(), 0, offset - start)
        .forEach(span -> braces.add(new Mark(Kind.BRACE, span.plus(start))));
    return braces.isEmpty()
        ? names.at(file, offset).map(found -> mentions(names, found)).orElse(List.of())
        : braces;
  }

  private static List<Mark> mentions(Names names, Names.Found found) {
    List<Mark> marks = new ArrayList<>();
    names
        .definition(found)
        .flatMap(place -> inFile(place, found.file()))
        .ifPresent(span -> marks.add(new Mark(kindOfFirst(found), span)));
    names
        .uses(found)
        .forEach(
            place ->
                inFile(place, found.file()).ifPresent(span -> marks.add(new Mark(Kind.USE, span))));
    return marks.stream()
        .sorted((a, b) -> Integer.compare(a.span().start(), b.span().start()))
        .toList();
  }

  /** A group is mentioned by each of its microphones and given by none. */
  private static Kind kindOfFirst(Names.Found found) {
    return found.kind() == Names.Kind.GROUP ? Kind.USE : Kind.DEFINITION;
  }

  private static Optional<TextSpan> inFile(Place place, SourceFile file) {
    List<Section> sections = file.tree().sections();
    for (int i = 0; i < sections.size(); i++) {
      if (sections.get(i) == place.section()) {
        return Optional.of(place.span().plus(file.tree().startOf(i)));
      }
    }
    return Optional.empty();
  }

  /** The braces of the innermost block one of whose braces is touched. */
  private static List<TextSpan> braces(SyntaxNode node, int start, int offset) {
    int at = start;
    List<TextSpan> own = new ArrayList<>();
    for (SyntaxElement child : node.children()) {
      TextSpan span = TextSpan.ofLength(at, child.length());
      if (child instanceof SyntaxNode inner && span.isTouchedBy(offset)) {
        List<TextSpan> found = braces(inner, at, offset);
        if (!found.isEmpty()) {
          return found;
        }
      } else if (child.kind() == SyntaxKind.LEFT_BRACE || child.kind() == SyntaxKind.RIGHT_BRACE) {
        own.add(span);
      }
      at = span.end();
    }
    return own.stream().anyMatch(span -> span.isTouchedBy(offset)) ? own : List.of();
  }
}
