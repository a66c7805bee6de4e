package chainwright.notation.lowering;

import chainwright.notation.fault.Fault;
import chainwright.notation.model.Branch;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Note;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Step;
import chainwright.notation.model.Unread;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Frequency;
import chainwright.quantity.Quantity;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads a split into bands and checks that the bands meet.
 *
 * @param steps reads what stands in the bands
 */
record MultibandReader(StepReader steps) {

  Step read(Group group) {
    Statement statement = group.statement();
    SettingsReader.Line line = steps.line(steps.kind("multiband"), statement, false);
    List<Step.Band> bands = new ArrayList<>();
    List<TextSpan> where = new ArrayList<>();
    List<Unread> unread = new ArrayList<>(line.settings().unread());
    List<Note> own = new ArrayList<>();
    if (statement.block().isPresent()) {
      Group.Grouped grouped = Group.of(statement.block().get(), steps.report());
      own.addAll(grouped.own());
      for (Group inner : grouped.groups()) {
        if (inner.statement().head().filter(head -> head.text().equals("band")).isEmpty()) {
          steps.reportOutside(inner, List.of("band"));
        } else {
          Optional<Step.Band> band = readBand(inner);
          if (band.isPresent()) {
            bands.add(band.get());
            where.add(edges(inner.statement()));
          } else {
            unread.add(new Unread(edges(inner.statement()), List.of()));
          }
        }
      }
    }
    checkBands(bands, where, statement, unread);
    return new Step.Multiband(
        new Settings(line.settings().kind(), line.settings().written(), unread),
        bands,
        StepReader.withOwn(line.clauses(), group, own),
        statement.lineSpan(),
        statement.span());
  }

  private Optional<Step.Band> readBand(Group group) {
    Statement statement = group.statement();
    ItemCursor cursor = new ItemCursor(statement, steps.report());
    double low = 0;
    double high = Double.POSITIVE_INFINITY;
    boolean isKnown = true;
    if (cursor.takesWord("below")) {
      Optional<Quantity> edge = cursor.amount(Unit.HERTZ, "`below`");
      isKnown = edge.isPresent();
      high = edge.map(Quantity::baseValue).orElse(high);
    } else if (cursor.takesWord("above")) {
      Optional<Quantity> edge = cursor.amount(Unit.HERTZ, "`above`");
      isKnown = edge.isPresent();
      low = edge.map(Quantity::baseValue).orElse(low);
    } else {
      Optional<Quantity[]> edges = cursor.range(Unit.HERTZ);
      if (edges.isEmpty()) {
        steps
            .report()
            .add(
                Fault.VALUE_MISSING,
                statement.lineSpan(),
                "a band says where it lies",
                "",
                "Write `band below 200 Hz`, `band 200 Hz to 3 kHz` or `band above 3 kHz`.");
        return Optional.empty();
      }
      low = edges.get()[0].baseValue();
      high = edges.get()[1].baseValue();
    }
    cursor.end();
    if (!isKnown) {
      return Optional.empty();
    }
    Branch body = steps.body("band", statement);
    Branch branch =
        new Branch(
            "band",
            "",
            body.settings(),
            body.steps(),
            StepReader.withOwn(Clauses.NONE, group, body.clauses().notes()),
            body.lineSpan(),
            body.span());
    return Optional.of(new Step.Band(low, high, branch));
  }

  /** A split whose bands do not make up the whole sound is no split, so nothing is made of it. */
  private void checkBands(
      List<Step.Band> bands, List<TextSpan> where, Statement statement, List<Unread> unread) {
    if (bands.size() < 2) {
      TextSpan head = statement.head().map(Item.Word::span).orElse(statement.lineSpan());
      if (unread.isEmpty()) {
        unread.add(new Unread(head, List.of()));
      }
      steps
          .report()
          .add(
              Fault.BLOCK_EMPTY,
              head,
              "`multiband` holds fewer than two bands",
              "A split needs a part below and a part above it.",
              "Write `band below 200 Hz { … }` and `band above 200 Hz { … }`.");
      return;
    }
    for (int i = 0; i + 1 < bands.size(); i++) {
      double end = bands.get(i).highHz();
      double start = bands.get(i + 1).lowHz();
      if (end != start) {
        TextSpan span = where.get(i + 1);
        unread.add(new Unread(span, List.of()));
        steps
            .report()
            .add(
                Fault.BANDS_DO_NOT_MEET,
                span,
                "the band above ends at " + spell(end) + ", this one begins at " + spell(start),
                "What lies between would be lost or counted twice.",
                "Let each band begin where the one above it in the text ends.");
      }
    }
  }

  /** Where the values stand that say where a band lies. */
  private static TextSpan edges(Statement band) {
    return band.items().stream()
        .filter(item -> item instanceof Item.Amount || item instanceof Item.Range)
        .map(Item::span)
        .findFirst()
        .orElse(band.lineSpan());
  }

  private static String spell(double hertz) {
    return Double.isInfinite(hertz) ? "the top" : Frequency.ofHertz(hertz).toString();
  }
}
