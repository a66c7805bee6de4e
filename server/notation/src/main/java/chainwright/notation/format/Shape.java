package chainwright.notation.format;

import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.SyntaxElement;
import chainwright.notation.syntax.SyntaxKind;
import chainwright.notation.syntax.SyntaxNode;
import chainwright.notation.syntax.SyntaxTree;

/** What a tree holds besides the characters of its tokens: which statement lies in which block. */
final class Shape {

  private Shape() {}

  /** Asks whether a section's new text has the same tree and the same troubles. */
  static boolean isSame(Section section, String newText) {
    SyntaxTree tree = SyntaxTree.parse(newText);
    if (tree.sections().size() != 1) {
      return false;
    }
    return of(section).equals(of(tree.sections().get(0)));
  }

  private static String of(Section section) {
    StringBuilder shape = new StringBuilder();
    add(section.root(), shape);
    for (Section.Trouble trouble : section.troubles()) {
      shape.append(trouble.fault()).append(' ');
    }
    return shape.toString();
  }

  private static void add(SyntaxElement element, StringBuilder shape) {
    SyntaxKind kind = element.kind();
    if (kind == SyntaxKind.WHITESPACE || kind == SyntaxKind.NEWLINE) {
      return;
    }
    shape.append(kind.name()).append('(');
    if (element instanceof SyntaxNode node
        && kind != SyntaxKind.QUANTITY
        && kind != SyntaxKind.RANGE) {
      for (SyntaxElement child : node.children()) {
        add(child, shape);
      }
      shape.append(')');
    }
  }
}
