package chainwright.engine.rules;

import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.model.Written;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.List;
import java.util.Optional;

/** Finds places in a stage's line and writes edits to it. */
public final class Mends {

  private Mends() {}

  /**
   * Returns where a finding about a part of a stage's line should stand.
   *
   * @param element the stage
   * @param span the part
   * @return the part; the line of {@code apply} for a stage of a preset
   */
  public static Place at(StageElement element, TextSpan span) {
    return element.appliedAt().orElse(new Place(element.place().section(), span));
  }

  /**
   * Returns where a finding about a setting should stand.
   *
   * @param element the stage
   * @param setting the setting's name
   * @return its value, or the stage's word if it is not written
   */
  public static Place at(StageElement element, String setting) {
    TextSpan span =
        element
            .stage()
            .settings()
            .written(setting)
            .map(Written::valueSpan)
            .orElse(element.stage().word().span());
    return at(element, span);
  }

  /**
   * Writes a setting: a new value for it, or the setting itself where it is left out.
   *
   * @param element the stage
   * @param setting the setting's name
   * @param value such as "12 ms"
   * @return the edit
   */
  public static PlacedEdit set(StageElement element, String setting, String value) {
    Section section = element.place().section();
    Optional<Written> written = element.stage().settings().written(setting);
    if (written.isPresent()) {
      return Edits.replaceValue(section, written.get(), value);
    }
    int end = element.stage().word().span().end();
    for (Written one : element.stage().settings().written()) {
      end = Math.max(end, one.span().end());
    }
    return new PlacedEdit(
        section, new TextEdit(new TextSpan(end, end), " " + setting + " " + value));
  }

  /**
   * Removes a statement, if it has its lines for itself.
   *
   * @param section the section
   * @param span the whole statement
   * @return the edit; empty if something else stands beside it
   */
  public static List<PlacedEdit> remove(Section section, TextSpan span) {
    return Edits.areAlone(section, span) ? List.of(Edits.removeLines(section, span)) : List.of();
  }
}
