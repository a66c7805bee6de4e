package chainwright.app.assist;

import chainwright.notation.diagnostic.PlacedEdit;
import java.util.List;

/**
 * Another way to write a text, offered and never urged.
 *
 * @param title what it does to the text, as an order
 * @param edits the edits, which do not overlap
 */
public record Rewrite(String title, List<PlacedEdit> edits) {

  /**
   * Copies the edits.
   *
   * @param title what it does
   * @param edits the edits
   */
  public Rewrite {
    edits = List.copyOf(edits);
  }
}
