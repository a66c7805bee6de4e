package chainwright.notation.format;

import chainwright.notation.syntax.SyntaxElement;
import chainwright.notation.syntax.SyntaxKind;
import chainwright.notation.syntax.SyntaxNode;
import chainwright.notation.syntax.SyntaxToken;
import chainwright.notation.syntax.SyntaxTree;
import chainwright.quantity.Unit;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a text says, in a form in which two spellings of one thing are equal. Written without the
 * formatter's rules: a quantity is its exact value in the base unit.
 */
final class Meaning {

  private final List<String> marks = new ArrayList<>();

  /** Returns the tokens and the nesting of a text. */
  static List<String> of(SyntaxTree tree) {
    Meaning meaning = new Meaning();
    tree.sections().forEach(section -> meaning.addAll(section.root().children()));
    return meaning.marks;
  }

  private void addAll(List<SyntaxElement> elements) {
    for (SyntaxElement element : elements) {
      if (element instanceof SyntaxToken token) {
        addToken(token);
      } else if (element instanceof SyntaxNode node) {
        addNode(node);
      }
    }
  }

  private void addNode(SyntaxNode node) {
    if (node.kind() == SyntaxKind.QUANTITY) {
      marks.add(quantity(node, unit(node)));
    } else if (node.kind() == SyntaxKind.RANGE) {
      SyntaxNode low = (SyntaxNode) node.children().get(0);
      SyntaxNode high = (SyntaxNode) node.children().get(node.children().size() - 1);
      boolean isShared = low.children().get(0).kind() == SyntaxKind.NUMBER && unit(low).isEmpty();
      marks.add("range " + quantity(low, isShared ? unit(high) : unit(low)));
      marks.add(quantity(high, unit(high)));
    } else {
      marks.add(node.kind() + "(");
      addAll(node.children());
      marks.add(")");
    }
  }

  private void addToken(SyntaxToken token) {
    switch (token.kind()) {
      case WHITESPACE, NEWLINE, CONTINUATION -> {}
      case STRING -> marks.add(token.text().replaceAll("^[“”]|”$", "\""));
      case PROSE ->
          marks.add(">" + token.text().substring(1).replaceFirst("^ ", "").stripTrailing());
      default -> marks.add(token.text().stripTrailing());
    }
  }

  private static Optional<String> unit(SyntaxNode quantity) {
    int last = quantity.children().size() - 1;
    return last == 0
        ? Optional.empty()
        : Optional.of(((SyntaxToken) quantity.children().get(last)).text());
  }

  private static String quantity(SyntaxNode quantity, Optional<String> spelling) {
    SyntaxToken number = (SyntaxToken) quantity.children().get(0);
    String digits = number.text().replace('\u2212', '-').replace('\u2013', '-');
    Optional<Unit> unit = spelling.flatMap(Unit::parse);
    if (number.kind() != SyntaxKind.NUMBER || digits.contains(",")) {
      return digits + " " + unit.map(Unit::symbol).or(() -> spelling).orElse("");
    }
    String sign = digits.startsWith("+") ? "+" : "";
    BigDecimal value = new BigDecimal(digits.endsWith(".") ? digits + "0" : digits);
    BigDecimal inBase = unit.map(u -> value.multiply(BigDecimal.valueOf(u.toBase()))).orElse(value);
    String plain = inBase.signum() == 0 ? "0" : inBase.stripTrailingZeros().toPlainString();
    return sign + plain + " " + unit.map(u -> u.dimension().name()).or(() -> spelling).orElse("");
  }
}
