package chainwright.notation.catalogue;

import java.util.List;
import java.util.Optional;

/**
 * A kind of stage, such as {@code high-pass}.
 *
 * @param word the word written in a chain
 * @param title its full name, such as "High-pass filter"
 * @param family what it is for
 * @param order its usual place in a chain; lower is earlier
 * @param says what it does, one sentence
 * @param overdone what too much of it sounds like
 * @param place why it stands where it usually does
 * @param settings its settings, in the order in which they are written
 */
public record StageKind(
    String word,
    String title,
    Family family,
    int order,
    String says,
    String overdone,
    String place,
    List<Setting> settings) {

  /**
   * Copies the settings.
   *
   * @param word its word
   * @param title its full name
   * @param family what it is for
   * @param order its usual place
   * @param says what it does
   * @param overdone what too much sounds like
   * @param place why it stands there
   * @param settings its settings
   */
  public StageKind {
    settings = List.copyOf(settings);
  }

  /**
   * Finds a setting by its name.
   *
   * @param name the name
   * @return the setting, or empty
   */
  public Optional<Setting> setting(String name) {
    // Asked as often as any: an iterator here would be a tenth of what a start allocates.
    for (int i = 0; i < settings.size(); i++) {
      Setting setting = settings.get(i);
      if (setting.name().equals(name)) {
        return Optional.of(setting);
      }
    }
    return Optional.empty();
  }

  /**
   * Finds the setting that is written as one of its words, without its name.
   *
   * @param word the word, such as "bilinear"
   * @return the first setting that can be that word, or empty
   */
  public Optional<Setting> settingOfWord(String word) {
    for (Setting setting : settings) {
      if (setting.isPositional()
          && setting.takes() instanceof Takes.OneOf oneOf
          && oneOf.words().contains(word)) {
        return Optional.of(setting);
      }
    }
    return Optional.empty();
  }
}
