package chainwright.notation.lowering;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Lowered;
import chainwright.notation.model.Name;
import chainwright.notation.model.Note;
import chainwright.notation.model.Step;
import chainwright.notation.syntax.Block;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.Spread;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads a section: what it defines, and what is wrong with it by itself.
 *
 * @param catalogue the vocabulary
 * @param spread how many sections are read
 */
public record SectionReader(Catalogue catalogue, Spread spread) {

  /**
   * Makes a reader that reads one section after the other.
   *
   * @param catalogue the vocabulary
   */
  public SectionReader(Catalogue catalogue) {
    this(catalogue, Spread.IN_TURN);
  }

  /**
   * Reads sections. This never fails.
   *
   * @param sections the sections
   * @return what each says
   */
  public List<Lowered> readAll(List<Section> sections) {
    return spread.map(sections, this::read);
  }

  /**
   * Reads a section. This never fails.
   *
   * @param section the section
   * @return what it says
   */
  public Lowered read(Section section) {
    Report report = new Report(section);
    Group.Grouped grouped = Group.of(Block.of(section), report);
    Optional<Definition> definition = Optional.empty();
    for (Note note : grouped.own()) {
      report.add(
          Fault.NOTE_WITHOUT_STATEMENT,
          note.span(),
          "this note belongs to no statement",
          "A note speaks of the statement above it.",
          "Move it below a statement, or make it a comment with `#`.");
    }
    for (Group group : grouped.groups()) {
      Optional<Definition> found = readTop(group, section, report);
      definition = definition.isPresent() ? definition : found;
    }
    return new Lowered(section, definition, report.findings());
  }

  private Optional<Definition> readTop(Group group, Section section, Report report) {
    Optional<Item.Word> head = group.statement().head();
    if (head.isEmpty()) {
      return Optional.empty();
    }
    return switch (head.get().text()) {
      case "import" -> readImport(group.statement(), section, report);
      case "session" -> Optional.of(new SessionReader(report).read(group, section));
      case "preset" -> readPreset(group, section, report);
      case "chain" -> readTrack(group, section, report, false);
      case "bus" -> readTrack(group, section, report, true);
      default -> {
        reportStray(group.statement(), head.get(), report);
        yield Optional.empty();
      }
    };
  }

  private void reportStray(Statement statement, Item.Word head, Report report) {
    boolean isKnown =
        catalogue.stage(head.text()).isPresent() || Vocabulary.find(head.text()).isPresent();
    List<String> top =
        Vocabulary.at(Vocabulary.Place.TOP).stream().map(Vocabulary.Keyword::text).toList();
    if (isKnown || Nearest.to(head.text(), top).isEmpty()) {
      report.add(
          Fault.OUTSIDE_A_CHAIN,
          statement.lineSpan(),
          "`" + head.text() + "` stands outside of a chain",
          "",
          "Put it between the braces of a `chain`, a `bus` or a `preset`.");
    } else {
      report.unknownWord(
          Fault.UNKNOWN_WORD,
          "`" + head.text() + "` cannot begin a definition",
          head.span(),
          head.text(),
          top);
    }
  }

  private static Optional<Definition> readImport(
      Statement statement, Section section, Report report) {
    ItemCursor cursor = new ItemCursor(statement, report);
    Optional<Item.Text> path = cursor.text(true);
    cursor.end();
    return path.map(
        text ->
            new Definition.Import(
                text.text(), text.span(), section, statement.lineSpan(), statement.span()));
  }

  private Optional<Definition> readPreset(Group group, Section section, Report report) {
    Body body = readBody(group, report);
    Header header = readHeader(group.statement(), report);
    Declarations declared = body.declarations();
    boolean declaresMore =
        !declared.equals(
            new Declarations(
                declared.source(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of()));
    if (declaresMore) {
      report.add(
          Fault.MISPLACED_WORD,
          group.statement().head().map(Item.Word::span).orElse(group.statement().lineSpan()),
          "a preset declares nothing but its `source`",
          "Where a signal comes from and goes to is said by the chain that applies the preset.",
          "Move the other declarations into the chain.");
    }
    return header
        .name()
        .map(
            name ->
                new Definition.Preset(
                    name,
                    header.title(),
                    declared.sourceKind(),
                    body.steps(),
                    header.clauses().withNotes(body.notes()),
                    section,
                    group.statement().lineSpan(),
                    group.statement().span()));
  }

  private Optional<Definition> readTrack(
      Group group, Section section, Report report, boolean isBus) {
    Body body = readBody(group, report);
    Header header = readHeader(group.statement(), report);
    return header
        .name()
        .map(
            name ->
                new Definition.Track(
                    isBus,
                    name,
                    header.title(),
                    body.declarations(),
                    body.steps(),
                    header.clauses().withNotes(body.notes()),
                    section,
                    group.statement().lineSpan(),
                    group.statement().span()));
  }

  private record Header(Optional<Name> name, String title, Clauses clauses) {}

  private static Header readHeader(Statement statement, Report report) {
    ItemCursor cursor = new ItemCursor(statement, report);
    String word = cursor.head();
    Optional<Name> name = readName(cursor, word, report);
    name.ifPresent(one -> Kebab.check(one, report));
    String title = cursor.text(false).map(Item.Text::text).orElse("");
    Optional<TextSpan> bypassed =
        cursor.takesWord("bypassed") ? Optional.of(cursor.lastSpan()) : Optional.empty();
    List<chainwright.notation.model.Deliberate> deliberates = new ArrayList<>();
    while (cursor.takesWord("deliberate")) {
      TextSpan start = cursor.lastSpan();
      Optional<Name> rule = cursor.name("the name of a rule, then the reason");
      Optional<Item.Text> reason = cursor.text(true);
      rule.ifPresent(
          code ->
              deliberates.add(
                  new chainwright.notation.model.Deliberate(
                      code,
                      reason.map(Item.Text::text).orElse(""),
                      start.union(cursor.lastSpan()))));
    }
    cursor.end();
    if (statement.block().isEmpty()) {
      report.noBlock(statement, word);
    }
    return new Header(name, title, new Clauses(Optional.empty(), bypassed, deliberates, List.of()));
  }

  private static Optional<Name> readName(ItemCursor cursor, String word, Report report) {
    Optional<Item.Text> title = cursor.textAhead();
    if (title.isEmpty()) {
      return cursor.name("a name, such as `" + word + " lead { … }`");
    }
    TextSpan start = new TextSpan(title.get().span().start(), title.get().span().start());
    Optional<String> name = Kebab.of(title.get().text());
    report.add(
        Fault.NAME_MISSING,
        title.get().span(),
        "before the title of a `" + word + "` comes its name",
        "Other lines refer to it by its name; the title is for readers.",
        "Write `" + word + " " + name.orElse("lead") + " \"…\"`.",
        name.map(
                one ->
                    List.of(
                        report.change(
                            "Write `" + one + "` before it", true, new TextEdit(start, one + " "))))
            .orElse(List.of()));
    return Optional.empty();
  }

  private record Body(Declarations declarations, List<Step> steps, List<Note> notes) {}

  private Body readBody(Group group, Report report) {
    DeclarationReader declarations = new DeclarationReader(catalogue, report);
    StepReader reader = new StepReader(catalogue, report);
    List<Step> steps = new ArrayList<>();
    List<Note> notes = new ArrayList<>();
    Optional<Block> block = group.statement().block();
    if (block.isPresent()) {
      Group.Grouped grouped = Group.of(block.get(), report);
      notes.addAll(grouped.own());
      Optional<Statement> firstStep = Optional.empty();
      String above = "";
      for (Group inner : grouped.groups()) {
        Statement statement = inner.statement();
        String word = statement.head().map(Item.Word::text).orElse("");
        if (DeclarationReader.isDeclaration(word)) {
          if (!word.equals("listen")) {
            if (firstStep.isPresent()) {
              reportLate(inner, firstStep.get(), report);
            }
          }
          declarations.read(statement);
          notes.addAll(inner.notes());
        } else {
          boolean isStep =
              StepReader.isStep(word, catalogue)
                  || !new StepFaults(catalogue, report).isMeantAsDeclaration(statement);
          firstStep = firstStep.isPresent() || !isStep ? firstStep : Optional.of(statement);
          Optional<Step> step = reader.read(inner, above);
          if (step.isPresent()) {
            steps.add(step.get());
          }
        }
        above = word;
      }
    }
    notes.addAll(group.notes());
    return new Body(declarations.declarations(), steps, notes);
  }

  private static void reportLate(Group declaration, Statement firstStep, Report report) {
    Statement statement = declaration.statement();
    TextSpan before = new TextSpan(firstStep.offset(), firstStep.offset());
    String moved = report.text(statement.lineSpan()) + "\n" + report.indent(firstStep.offset());
    report.add(
        Fault.DECLARATION_AFTER_A_STAGE,
        statement.lineSpan(),
        "`"
            + report.text(statement.head().map(Item.Word::span).orElse(before))
            + "` stands below a stage",
        "What holds for the whole chain is declared before its first stage.",
        "Move it above the first stage.",
        declaration.notes().isEmpty()
            ? List.of(
                report.fix(
                    "Move it above the first stage",
                    true,
                    new TextEdit(before, moved),
                    report.removal(statement.lineSpan())))
            : List.of());
  }
}
