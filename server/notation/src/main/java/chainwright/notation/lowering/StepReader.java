package chainwright.notation.lowering;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Branch;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Name;
import chainwright.notation.model.Note;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Step;
import chainwright.notation.syntax.Block;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Quantity;
import chainwright.quantity.TimeSpan;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads steps: stages and the structures that hold them.
 *
 * @param catalogue the vocabulary
 * @param report where troubles go
 */
record StepReader(Catalogue catalogue, Report report) {

  List<Step> readAll(List<Group> groups) {
    List<Step> steps = new ArrayList<>();
    String above = "";
    for (Group group : groups) {
      read(group, above).ifPresent(steps::add);
      above = group.statement().head().map(Item.Word::text).orElse("");
    }
    return steps;
  }

  /** Whether a word begins a stage or a structure. */
  static boolean isStep(String word, Catalogue catalogue) {
    return catalogue.stage(word).filter(kind -> kind.family() != Family.STRUCTURE).isPresent()
        || Vocabulary.find(word)
            .filter(keyword -> keyword.place() == Vocabulary.Place.STRUCTURE)
            .isPresent();
  }

  /** Reads what stands on a line. */
  SettingsReader.Line line(StageKind kind, Statement statement, boolean takesTitle) {
    return SettingsReader.read(kind, statement, takesTitle, catalogue, report);
  }

  /** Reads one step; the word of the line above it tells what it may have meant to continue. */
  Optional<Step> read(Group group, String above) {
    Statement statement = group.statement();
    Optional<Item.Word> head = statement.head();
    if (head.isEmpty()) {
      return Optional.empty();
    }
    String word = head.get().text();
    return switch (word) {
      case "apply" -> readApply(group);
      case "insert" -> Optional.of(readInsert(group));
      case "parallel" -> Optional.of(readParallel(group));
      case "mid-side" -> Optional.of(readMidSide(group));
      case "multiband" -> Optional.of(new MultibandReader(this).read(group));
      case "during" -> readDuring(group);
      default -> readStage(group, head.get(), above);
    };
  }

  private Optional<Step> readStage(Group group, Item.Word head, String above) {
    Statement statement = group.statement();
    Optional<StageKind> kind =
        catalogue.stage(head.text()).filter(one -> one.family() != Family.STRUCTURE);
    if (kind.isEmpty()) {
      new StepFaults(catalogue, report).unknown(statement, head, above);
      return Optional.empty();
    }
    SettingsReader.Line line = line(kind.get(), statement, false);
    List<Step> sideChain = new ArrayList<>();
    List<Note> notes = new ArrayList<>(group.notes());
    statement.block().ifPresent(block -> readStageBlock(kind.get(), block, sideChain, notes));
    return Optional.of(
        new Step.Stage(
            new Name(head.text(), head.span()),
            line.settings(),
            sideChain,
            line.clauses().withNotes(notes),
            statement.lineSpan(),
            statement.span()));
  }

  private void readStageBlock(StageKind kind, Block block, List<Step> sideChain, List<Note> notes) {
    Group.Grouped grouped = Group.of(block, report);
    notes.addAll(grouped.own());
    boolean hasDetector = kind.setting("key").isPresent();
    for (Group inner : grouped.groups()) {
      Optional<Item.Word> head = inner.statement().head();
      boolean isSideChain = head.filter(one -> one.text().equals("side-chain")).isPresent();
      if (isSideChain && !hasDetector) {
        report.add(
            Fault.BLOCK_UNEXPECTED,
            new TextSpan(block.span().start(), block.span().start() + 1),
            "`" + kind.word() + "` has no detector, so it has no side-chain",
            "A side-chain shapes what a detector hears.",
            "Put its stages into the chain, or choose a stage with a detector.");
      } else if (head.isPresent() && head.get().text().equals("side-chain")) {
        new ItemCursor(inner.statement(), report).end();
        inner
            .statement()
            .block()
            .ifPresent(body -> sideChain.addAll(readAll(Group.of(body, report).groups())));
      } else {
        report.add(
            Fault.MISPLACED_WORD,
            inner.statement().lineSpan(),
            "in the block of `" + kind.word() + "` only `side-chain` can stand",
            "",
            "Write `side-chain { … }`, or move the line out of the block.");
      }
    }
  }

  private Optional<Step> readApply(Group group) {
    Statement statement = group.statement();
    List<Item> items = statement.items();
    SettingsReader.Line line = line(plain("apply"), withoutFirst(statement), false);
    if (items.isEmpty() || !(items.get(0) instanceof Item.Word name)) {
      report.add(
          Fault.NAME_MISSING,
          statement.lineSpan(),
          "after `apply` comes the name of a preset",
          "",
          "For example: `apply rumble-guard`.");
      return Optional.empty();
    }
    return Optional.of(
        new Step.Apply(
            new Name(name.text(), name.span()),
            line.clauses().withNotes(group.notes()),
            statement.lineSpan(),
            statement.span()));
  }

  /** A statement's view in which its second word stands first, so that a name is not a setting. */
  private static Statement withoutFirst(Statement statement) {
    int at = statement.offset();
    for (int i = 0; i < statement.node().children().size(); i++) {
      boolean isSecondWord =
          i > 0
              && statement.node().children().get(i).kind()
                  == chainwright.notation.syntax.SyntaxKind.WORD;
      if (isSecondWord) {
        return new Statement(
            chainwright.notation.syntax.SyntaxNode.of(
                statement.node().kind(),
                statement.node().children().subList(i, statement.node().children().size())),
            at);
      }
      at += statement.node().children().get(i).length();
    }
    return statement;
  }

  private Step readInsert(Group group) {
    Statement statement = group.statement();
    SettingsReader.Line line = line(kind("insert"), statement, true);
    if (line.title().isEmpty() && !report.isReported(Fault.TEXT_MISSING, statement.lineSpan())) {
      report.add(
          Fault.TEXT_MISSING,
          statement.head().map(Item.Word::span).orElse(statement.lineSpan()),
          "after `insert` comes the name of the device, in quotes",
          "",
          "For example: `insert \"outboard equaliser\" send 0 dBu return 0 dBu`.");
    }
    Branch body = body("insert", statement);
    return new Step.Insert(
        line.title(),
        line.settings(),
        body,
        clauses(line, group, body),
        statement.lineSpan(),
        statement.span());
  }

  private Step readParallel(Group group) {
    Statement statement = group.statement();
    SettingsReader.Line line = line(kind("parallel"), statement, false);
    Parts parts = parts(group, List.of("path"), true);
    if (parts.branches().isEmpty()) {
      reportEmpty(statement, "parallel", "path");
    }
    return new Step.Parallel(
        parts.branches(),
        withOwn(line.clauses(), group, parts.own()),
        statement.lineSpan(),
        statement.span());
  }

  private Step readMidSide(Group group) {
    Statement statement = group.statement();
    SettingsReader.Line line = line(kind("mid-side"), statement, false);
    Parts parts = parts(group, List.of("mid", "side"), false);
    if (parts.branches().isEmpty()) {
      reportEmpty(statement, "mid-side", "mid");
    }
    return new Step.MidSide(
        parts.branches(),
        withOwn(line.clauses(), group, parts.own()),
        statement.lineSpan(),
        statement.span());
  }

  private void reportEmpty(Statement statement, String word, String part) {
    report.add(
        Fault.BLOCK_EMPTY,
        statement.head().map(Item.Word::span).orElse(statement.lineSpan()),
        "`" + word + "` holds no `" + part + "`",
        "",
        "Write `" + part + " { … }` into its block.");
  }

  private Optional<Step> readDuring(Group group) {
    Statement statement = group.statement();
    ItemCursor cursor = new ItemCursor(statement, report);
    Optional<Quantity[]> passage = cursor.range(Unit.SECOND);
    Branch body = body("during", statement);
    if (passage.isEmpty()) {
      report.add(
          Fault.VALUE_MISSING,
          statement.lineSpan(),
          "after `during` comes a passage, such as `0:31.2 to 0:31.8`",
          "",
          "Write where it begins and where it ends.");
      return Optional.empty();
    }
    cursor.end();
    if (statement.block().isEmpty()) {
      report.noBlock(statement, "during");
    }
    return Optional.of(
        new Step.During(
            new TimeSpan(passage.get()[0].baseValue()),
            new TimeSpan(passage.get()[1].baseValue()),
            body,
            new Clauses(Optional.empty(), Optional.empty(), List.of(), notes(group, body)),
            statement.lineSpan(),
            statement.span()));
  }

  /** The branches inside a structure's block, and the notes that belong to the structure. */
  record Parts(List<Branch> branches, List<Note> own) {}

  private Parts parts(Group group, List<String> words, boolean mayRepeat) {
    List<Branch> branches = new ArrayList<>();
    Optional<Block> block = group.statement().block();
    if (block.isEmpty()) {
      return new Parts(branches, List.of());
    }
    Group.Grouped grouped = Group.of(block.get(), report);
    for (Group inner : grouped.groups()) {
      Optional<Item.Word> head = inner.statement().head();
      String word = head.map(Item.Word::text).orElse("");
      if (!words.contains(word)) {
        reportOutside(inner, words);
      } else if (!mayRepeat && branches.stream().anyMatch(one -> one.word().equals(word))) {
        report.add(
            Fault.PART_TWICE,
            inner.statement().lineSpan(),
            "`" + word + "` stands here twice",
            "",
            "Put all of its stages into one block.");
      } else {
        branches.add(branch(word, inner, mayRepeat));
      }
    }
    return new Parts(branches, grouped.own());
  }

  void reportOutside(Group inner, List<String> words) {
    new StepFaults(catalogue, report).outside(inner.statement(), words);
  }

  Branch branch(String word, Group group, boolean takesTitle) {
    SettingsReader.Line line = line(kind(word), group.statement(), takesTitle);
    Branch body = body(word, group.statement());
    return new Branch(
        word,
        line.title(),
        line.settings(),
        body.steps(),
        clauses(line, group, body),
        body.lineSpan(),
        body.span());
  }

  Branch body(String word, Statement statement) {
    List<Step> steps = List.of();
    List<Note> own = List.of();
    if (statement.block().isPresent()) {
      Group.Grouped grouped = Group.of(statement.block().get(), report);
      steps = readAll(grouped.groups());
      own = grouped.own();
    }
    return new Branch(
        word,
        "",
        new Settings(kind(word), List.of()),
        steps,
        Clauses.NONE.withNotes(own),
        statement.lineSpan(),
        statement.span());
  }

  private static Clauses clauses(SettingsReader.Line line, Group group, Branch body) {
    return withOwn(line.clauses(), group, body.clauses().notes());
  }

  static Clauses withOwn(Clauses clauses, Group group, List<Note> own) {
    List<Note> notes = new ArrayList<>(own);
    notes.addAll(group.notes());
    return clauses.withNotes(notes);
  }

  private static List<Note> notes(Group group, Branch body) {
    return withOwn(Clauses.NONE, group, body.clauses().notes()).notes();
  }

  StageKind kind(String word) {
    return catalogue.stage(word).orElseGet(() -> plain(word));
  }

  /** A structure without settings of its own. */
  private static StageKind plain(String word) {
    String says = Vocabulary.find(word).map(Vocabulary.Keyword::says).orElse("");
    return new StageKind(word, word, Family.STRUCTURE, 0, says, "", "", List.of());
  }
}
