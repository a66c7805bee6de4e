package chainwright.notation.model;

import chainwright.notation.text.TextSpan;
import java.util.List;
import java.util.Optional;

/**
 * What may be said of any statement, whatever it does.
 *
 * @param label the name given with {@code as}
 * @param bypassed where {@code bypassed} stands, if it does
 * @param deliberates the rules that are broken on purpose here
 * @param notes the notes below it
 */
public record Clauses(
    Optional<Name> label,
    Optional<TextSpan> bypassed,
    List<Deliberate> deliberates,
    List<Note> notes) {

  /** Nothing said. */
  public static final Clauses NONE =
      new Clauses(Optional.empty(), Optional.empty(), List.of(), List.of());

  /**
   * Copies the lists.
   *
   * @param label the label
   * @param bypassed where {@code bypassed} stands
   * @param deliberates the rules broken on purpose
   * @param notes the notes
   */
  public Clauses {
    deliberates = List.copyOf(deliberates);
    notes = List.copyOf(notes);
  }

  /**
   * Returns the same clauses with other notes.
   *
   * @param newNotes the notes
   * @return the copy
   */
  public Clauses withNotes(List<Note> newNotes) {
    return new Clauses(label, bypassed, deliberates, newNotes);
  }
}
