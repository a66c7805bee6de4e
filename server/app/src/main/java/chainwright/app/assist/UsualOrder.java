package chainwright.app.assist;

import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Note;
import chainwright.notation.model.Step;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Proposes the stages of a chain in their usual order: the catalogue's, an equaliser that lifts
 * behind the dynamics, so that it does not work their detectors, but not behind a de-esser that it
 * stood before.
 *
 * <p>Each run of plain stages is sorted by itself. Structures and applied presets stay where they
 * are, for what is in them was put there as a whole. With a stage move its notes, its label, and
 * the comments above and behind it; blank lines stay between the places.
 */
public final class UsualOrder {

  /** Behind compressors and inserts, before what shapes the whole. */
  private static final int LIFTS = 59;

  private static final int MOST_NAMED = 6;

  private UsualOrder() {}

  /** A stage and the lines that go with it, without the blank lines above. */
  private record Lines(Step.Stage stage, TextSpan span) {

    /** The place; a lift that a de-esser follows stays before it, which would be undone behind. */
    int order(List<Step.Stage> run) {
      boolean isLift =
          stage.kind().family() == Family.EQUALISER
              && stage.settings().direction() == RangeRow.Direction.BOOST;
      if (!isLift) {
        return stage.kind().order();
      }
      for (Step.Stage later : run.subList(run.indexOf(stage), run.size())) {
        if (later.kind().word().equals("de-ess")) {
          return Math.min(stage.kind().order(), later.kind().order());
        }
      }
      return Math.max(LIFTS, stage.kind().order());
    }
  }

  /**
   * Returns the proposal for a chain, a bus or a preset.
   *
   * @param definition the definition
   * @return the proposal; empty where the order is usual already, or the lines cannot be moved
   */
  public static Optional<Rewrite> of(Definition definition) {
    if (definition instanceof Definition.Track track) {
      return of(track.section(), track.steps());
    }
    return definition instanceof Definition.Preset preset
        ? of(preset.section(), preset.steps())
        : Optional.empty();
  }

  private static Optional<Rewrite> of(Section section, List<Step> steps) {
    List<PlacedEdit> edits = new ArrayList<>();
    List<String> moved = new ArrayList<>();
    List<Step.Stage> run = new ArrayList<>();
    for (Step step : steps) {
      if (step instanceof Step.Stage stage) {
        run.add(stage);
      } else {
        sort(section, run, edits, moved);
        run.clear();
      }
    }
    sort(section, run, edits, moved);
    if (edits.isEmpty()) {
      return Optional.empty();
    }
    String names =
        moved.stream()
            .limit(MOST_NAMED)
            .map(word -> "`" + word + "`")
            .collect(Collectors.joining(", "));
    return Optional.of(
        new Rewrite(
            "Put the stages into the usual order: "
                + names
                + (moved.size() > MOST_NAMED ? " …" : "")
                + " (changes the sound)",
            edits));
  }

  private static void sort(
      Section section, List<Step.Stage> run, List<PlacedEdit> edits, List<String> moved) {
    List<Lines> lines = lines(section.text(), run);
    List<Lines> sorted = new ArrayList<>(lines);
    sorted.sort(Comparator.comparingInt(one -> one.order(run)));
    if (lines.size() < 2 || sorted.equals(lines)) {
      return;
    }
    for (int i = 0; i < lines.size(); i++) {
      moved.add(sorted.get(i).stage().kind().word());
      if (!sorted.get(i).equals(lines.get(i))) {
        TextSpan from = sorted.get(i).span();
        edits.add(
            new PlacedEdit(
                section,
                new TextEdit(
                    lines.get(i).span(), section.text().substring(from.start(), from.end()))));
      }
    }
  }

  /** Returns the lines of each stage; none if two share a line. */
  private static List<Lines> lines(String text, List<Step.Stage> run) {
    List<Lines> lines = new ArrayList<>();
    int free = run.isEmpty() ? 0 : lineStart(text, run.get(0).span().start());
    free = aboveComments(text, free);
    for (Step.Stage stage : run) {
      int start = lineStart(text, stage.span().start());
      boolean isAlone = text.substring(start, stage.span().start()).isBlank();
      int end = lineEnd(text, endOf(stage));
      if (!isAlone || start < free || text.substring(endOf(stage), end).contains("}")) {
        return List.of();
      }
      lines.add(new Lines(stage, new TextSpan(skipBlankLines(text, free, start), end)));
      free = Math.min(text.length(), end + 1);
    }
    return lines;
  }

  private static int endOf(Step.Stage stage) {
    int end = stage.span().end();
    for (Note note : stage.clauses().notes()) {
      end = Math.max(end, note.span().end());
    }
    return end;
  }

  /** Goes up over the comment lines that stand right above the first stage. */
  private static int aboveComments(String text, int start) {
    int at = start;
    while (at > 0) {
      int above = lineStart(text, at - 1);
      if (!text.substring(above, at).strip().startsWith("#")) {
        return at;
      }
      at = above;
    }
    return at;
  }

  private static int skipBlankLines(String text, int from, int to) {
    int at = from;
    while (at < to) {
      int next = Math.min(to, lineEnd(text, at) + 1);
      if (!text.substring(at, next).isBlank()) {
        return at;
      }
      at = next;
    }
    return to;
  }

  private static int lineStart(String text, int offset) {
    int start = offset;
    while (start > 0 && text.charAt(start - 1) != '\n') {
      start--;
    }
    return start;
  }

  private static int lineEnd(String text, int offset) {
    int end = offset;
    while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
      end++;
    }
    return end;
  }
}
