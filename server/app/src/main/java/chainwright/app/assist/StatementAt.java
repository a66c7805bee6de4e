package chainwright.app.assist;

import chainwright.notation.syntax.Block;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.Statement;
import java.util.Optional;

/** Finds the statement that a place belongs to. */
final class StatementAt {

  private StatementAt() {}

  /** Returns the innermost statement whose line is touched; empty between statements. */
  static Optional<Statement> find(Section section, int offset) {
    return find(Block.of(section), offset);
  }

  private static Optional<Statement> find(Block block, int offset) {
    for (Block.Member member : block.members()) {
      if (member instanceof Block.Line line && line.statement().span().isTouchedBy(offset)) {
        Statement statement = line.statement();
        if (statement.lineSpan().isTouchedBy(offset)) {
          return Optional.of(statement);
        }
        Optional<Statement> inner = statement.block().flatMap(one -> find(one, offset));
        if (inner.isPresent()) {
          return inner;
        }
      }
    }
    return Optional.empty();
  }
}
