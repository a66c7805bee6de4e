package chainwright.notation.model;

import chainwright.notation.catalogue.Setting;
import chainwright.notation.text.TextSpan;
import java.util.List;

/**
 * Something on the line of a stage that stands for a setting and could not be read.
 *
 * @param span where it stands, from the start of its section
 * @param settings the settings that it may be meant for; empty if nothing tells
 */
public record Unread(TextSpan span, List<Setting> settings) {

  /**
   * Copies the list.
   *
   * @param span where it stands
   * @param settings the settings that it may be meant for
   */
  public Unread {
    settings = List.copyOf(settings);
  }
}
