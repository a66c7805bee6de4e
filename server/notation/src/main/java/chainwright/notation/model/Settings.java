package chainwright.notation.model;

import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.catalogue.UsedWith;
import chainwright.notation.catalogue.ValueText;
import chainwright.quantity.Dimension;
import chainwright.quantity.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The settings of one stage: those written, and what holds for the others.
 *
 * <p>What is written and cannot be read stands for no value, and no default stands in for it: what
 * was meant is not known.
 *
 * @param kind the stage kind they belong to
 * @param written those written, in the order of the text, each setting once
 * @param unread what is written beside them and could not be read
 */
public record Settings(StageKind kind, List<Written> written, List<Unread> unread) {

  /**
   * Copies the lists.
   *
   * @param kind the stage kind
   * @param written those written
   * @param unread what could not be read
   */
  public Settings {
    written = List.copyOf(written);
    unread = List.copyOf(unread);
  }

  /**
   * Makes settings that are all read.
   *
   * @param kind the stage kind
   * @param written those written
   */
  public Settings(StageKind kind, List<Written> written) {
    this(kind, written, List.of());
  }

  /**
   * Finds a setting as written.
   *
   * @param name the setting's name
   * @return it, or empty if it is not written
   */
  public Optional<Written> written(String name) {
    // Rules ask for settings a hundred times a chain, before this is compiled: neither lambdas nor
    // iterators here.
    for (int i = 0; i < written.size(); i++) {
      Written one = written.get(i);
      if (one.setting().name().equals(name)) {
        return Optional.of(one);
      }
    }
    return Optional.empty();
  }

  /**
   * Returns the value in use: the one written, else the catalogue's default.
   *
   * @param name the setting's name
   * @return the value; empty if it is not written and has no default, or a computed one, and if
   *     something is written for it that could not be read
   */
  public Optional<Value> value(String name) {
    Optional<Written> one = written(name);
    if (one.isPresent()) {
      return Optional.of(one.get().value());
    }
    Optional<Setting> setting = kind.setting(name);
    return setting.isPresent() && isFree(setting.get()) && !mayBeUnread(setting.get())
        ? byOmission(setting.get())
        : Optional.empty();
  }

  /**
   * Asks whether a setting could still be written: it is not, not even unreadably, and none is that
   * says the same in another way.
   *
   * @param setting a setting of this kind
   * @return whether it is free
   */
  public boolean isFree(Setting setting) {
    for (int i = 0; i < written.size(); i++) {
      if (isSame(written.get(i).setting(), setting)) {
        return false;
      }
    }
    for (Unread one : unread) {
      if (one.settings().size() == 1 && isSame(one.settings().get(0), setting)) {
        return false;
      }
    }
    return true;
  }

  /**
   * Asks whether something that could not be read may be meant for a setting.
   *
   * @param setting a setting of this kind
   * @return whether its value is in doubt, even if another one is written for it
   */
  public boolean mayBeUnread(Setting setting) {
    for (Unread one : unread) {
      for (Setting meant : one.settings()) {
        if (isSame(meant, setting)) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean isSame(Setting one, Setting other) {
    return one.name().equals(other.name()) || one.saysTheSameAs(other);
  }

  /**
   * Asks whether the settings say all that they have to say.
   *
   * @return whether all that is written could be read, and every setting that must be written is
   */
  public boolean areFinished() {
    if (!unread.isEmpty()) {
      return false;
    }
    for (Setting setting : kind.settings()) {
      if (setting.byOmission() instanceof Default.Required && isFree(setting)) {
        return false;
      }
    }
    return true;
  }

  /**
   * Returns the settings that must be written, and for which nothing is, not even unreadably.
   *
   * @return them, in the catalogue's order
   */
  public List<Setting> missing() {
    List<Setting> missing = new ArrayList<>();
    for (Setting setting : kind.settings()) {
      if (setting.byOmission() instanceof Default.Required
          && isFree(setting)
          && !mayBeUnread(setting)) {
        missing.add(setting);
      }
    }
    return missing;
  }

  /**
   * Asks whether a setting is used, as the other settings stand.
   *
   * @param setting a setting of this kind
   * @return whether another value of it would change the sound
   */
  public boolean isInEffect(Setting setting) {
    if (setting.usedWith().isEmpty()) {
      return true;
    }
    UsedWith used = setting.usedWith().get();
    return used.values().isEmpty()
        ? written(used.setting()).isPresent()
        : value(used.setting())
            .filter(value -> used.values().contains(value.toString()))
            .isPresent();
  }

  /**
   * Returns the number in use, in the base unit of its dimension.
   *
   * @param name the setting's name
   * @return such as 3100 for 3.1 kHz; empty if there is no number
   */
  public Optional<Double> number(String name) {
    return value(name).orElse(null) instanceof Value.Of of
        ? Optional.of(of.quantity().baseValue())
        : Optional.empty();
  }

  /**
   * Returns the word in use.
   *
   * @param name the setting's name
   * @return such as "bilinear"; empty if there is no word
   */
  public Optional<String> word(String name) {
    return value(name).orElse(null) instanceof Value.Word word
        ? Optional.of(word.word())
        : Optional.empty();
  }

  /**
   * Returns which way the stage turns the level, by the sign of its {@code gain}.
   *
   * @return cut or boost, or any if it has no gain
   */
  public RangeRow.Direction direction() {
    return number("gain")
        .map(gain -> gain < 0 ? RangeRow.Direction.CUT : RangeRow.Direction.BOOST)
        .orElse(RangeRow.Direction.ANY);
  }

  /**
   * Asks whether the sign of the gain is known, which decides between ranges.
   *
   * @return whether the kind has no gain, or it is written and could be read
   */
  public boolean isDirectionKnown() {
    return kind.setting("gain").isEmpty() || number("gain").isPresent();
  }

  /**
   * Returns the trade's range for a setting here.
   *
   * @param setting a setting of this kind
   * @param source the kind of source, if it is known
   * @return the range, or empty if the setting has none
   */
  public Optional<TradeRange> range(Setting setting, Optional<SourceKind> source) {
    return setting.range(source, direction());
  }

  /**
   * Returns the trade's range for a setting here, and for whom it was given.
   *
   * @param setting a setting of this kind
   * @param source the kind of source, if it is known
   * @return the row, or empty if the setting has none
   */
  public Optional<RangeRow> row(Setting setting, Optional<SourceKind> source) {
    return setting.row(source, direction());
  }

  /**
   * Returns what holds where a setting is not written.
   *
   * @param setting the setting
   * @return the value; empty if there is none or it has to be computed
   */
  public static Optional<Value> byOmission(Setting setting) {
    if (setting.byOmission() instanceof Default.Amount amount) {
      return quantity(setting.takes(), amount.value()).map(Value.Of::new);
    }
    if (setting.byOmission() instanceof Default.Word word) {
      return Optional.of(new Value.Word(word.word()));
    }
    return Optional.empty();
  }

  /**
   * Makes the quantity that a number in a setting's unit stands for.
   *
   * @param takes what the setting takes
   * @param value the number, in the setting's unit
   * @return the quantity; empty if the setting takes none
   */
  public static Optional<Quantity> quantity(Takes takes, double value) {
    if (takes instanceof Takes.InUnit unit) {
      return Optional.of(Quantity.of(unit.unit().dimension(), unit.unit().toBase(value)));
    }
    if (takes instanceof Takes.Quality) {
      return Optional.of(Quantity.of(Dimension.QUALITY, value));
    }
    return takes instanceof Takes.PlainNumber
        ? Optional.of(Quantity.of(Dimension.COUNT, value))
        : Optional.empty();
  }

  /**
   * Spells the value of a setting.
   *
   * @param setting the setting
   * @param value its value
   * @return such as "5.5 to 9 kHz", "6 dB" for a knee, or the word
   */
  public static String inWords(Setting setting, Value value) {
    if (value instanceof Value.Of one) {
      return ValueText.of(setting, one.quantity());
    }
    return value instanceof Value.Span span
        ? ValueText.range(setting, span.low(), span.high())
        : value.toString();
  }
}
