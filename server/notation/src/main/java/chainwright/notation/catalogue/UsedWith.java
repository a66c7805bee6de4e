package chainwright.notation.catalogue;

import java.util.List;

/**
 * Another setting that decides whether a setting is used at all.
 *
 * @param setting the other setting's name
 * @param values the values with which it is used, as they are written, such as "programme" or "12
 *     dB/oct"; empty if any will do that is written
 */
public record UsedWith(String setting, List<String> values) {

  /**
   * Copies the values.
   *
   * @param setting the other setting's name
   * @param values the values
   */
  public UsedWith {
    values = List.copyOf(values);
  }
}
