package chainwright.app.assist;

import chainwright.notation.diagnostic.Prose;
import java.util.List;
import java.util.OptionalInt;

/**
 * What can be written on the line of a stage.
 *
 * @param label the stage with all its settings, such as {@code gain gain dB [expected-peak dBFS]};
 *     what stands in brackets may be left out
 * @param says what the stage does
 * @param parameters its settings, in the order of the label
 * @param active which of them the caret is at, counted from 0; empty where all are written
 */
public record Signature(String label, String says, List<Parameter> parameters, OptionalInt active) {

  /**
   * A setting.
   *
   * @param start where it begins in the label
   * @param end where it ends there
   * @param says what it does, what holds without it, and its range with its source, in plain words
   */
  public record Parameter(int start, int end, String says) {

    /**
     * Sets the words.
     *
     * @param start where it begins
     * @param end where it ends
     * @param says what it does
     */
    public Parameter {
      says = Prose.set(says);
    }
  }

  /**
   * Copies the parameters.
   *
   * @param label the stage with its settings
   * @param says what the stage does
   * @param parameters its settings
   * @param active the one at the caret
   */
  public Signature {
    parameters = List.copyOf(parameters);
  }
}
