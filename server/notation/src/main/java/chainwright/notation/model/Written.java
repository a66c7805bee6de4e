package chainwright.notation.model;

import chainwright.notation.catalogue.Setting;
import chainwright.notation.text.TextSpan;
import java.util.Optional;

/**
 * A setting as it is written in a text.
 *
 * @param setting which setting
 * @param value its value
 * @param nameSpan where its name stands; empty where it is written without
 * @param valueSpan where its value stands
 */
public record Written(
    Setting setting, Value value, Optional<TextSpan> nameSpan, TextSpan valueSpan) {

  /**
   * Returns the whole stretch, with the name.
   *
   * @return the span
   */
  public TextSpan span() {
    return nameSpan.map(name -> name.union(valueSpan)).orElse(valueSpan);
  }
}
