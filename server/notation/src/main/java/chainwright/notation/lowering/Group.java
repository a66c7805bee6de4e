package chainwright.notation.lowering;

import chainwright.notation.fault.Fault;
import chainwright.notation.model.Note;
import chainwright.notation.syntax.Block;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A statement with the notes below it. */
record Group(Statement statement, List<Note> notes) {

  /** The statements of a block, and the notes before the first of them. */
  record Grouped(List<Note> own, List<Group> groups) {}

  /** Sorts the members of a block: each note goes to the statement above it. */
  static Grouped of(Block block, Report report) {
    List<Note> own = new ArrayList<>();
    List<Group> groups = new ArrayList<>();
    List<Note> current = own;
    for (Block.Member member : block.members()) {
      if (member instanceof Block.Prose prose) {
        current.add(new Note(prose.text(), prose.span()));
      } else if (member instanceof Block.Line line) {
        Statement statement = line.statement();
        if (statement.head().filter(head -> head.text().equals("note")).isPresent()) {
          note(statement, report).ifPresent(current::add);
        } else {
          current = new ArrayList<>();
          groups.add(new Group(statement, current));
        }
      }
    }
    return new Grouped(own, groups);
  }

  private static Optional<Note> note(Statement statement, Report report) {
    List<Item> items = statement.items();
    if (items.size() == 1 && items.get(0) instanceof Item.Text text) {
      return Optional.of(new Note(text.text(), statement.lineSpan()));
    }
    TextSpan line = statement.lineSpan();
    TextSpan bare = items.isEmpty() ? line : new TextSpan(items.get(0).span().start(), line.end());
    String quoted = "\"" + report.text(bare) + "\"";
    boolean isBare = !items.isEmpty() && report.text(bare).indexOf('"') < 0;
    report.add(
        Fault.TEXT_MISSING,
        bare,
        "after `note` comes one text in quotes",
        "",
        "Write `note \"…\"`, or begin lines of prose with `>`.",
        isBare
            ? List.of(report.fix("Write it in quotes", true, new TextEdit(bare, quoted)))
            : List.of());
    return Optional.empty();
  }
}
