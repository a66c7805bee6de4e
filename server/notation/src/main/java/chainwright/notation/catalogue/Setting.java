package chainwright.notation.catalogue;

import java.util.List;
import java.util.Optional;

/**
 * One setting of a stage kind.
 *
 * @param name its word, kebab-case (or {@code Q})
 * @param takes what kind of value it takes
 * @param isPositional whether it is written without its name, known by its unit or word
 * @param says what it does, one sentence
 * @param low the lower end of what it can mean
 * @param high the upper end of what it can mean
 * @param byOmission what holds where it is not written
 * @param offers the values that exist, for a setting with few of them (slopes); else empty
 * @param rows its ranges
 * @param usedWith the other setting that decides whether it is used; empty if it always is
 */
public record Setting(
    String name,
    Takes takes,
    boolean isPositional,
    String says,
    Limit low,
    Limit high,
    Default byOmission,
    List<Double> offers,
    List<RangeRow> rows,
    Optional<UsedWith> usedWith) {

  /**
   * Copies the lists.
   *
   * @param name its word
   * @param takes what it takes
   * @param isPositional whether it is written without its name
   * @param says what it does
   * @param low the lower end
   * @param high the upper end
   * @param byOmission what holds by omission
   * @param offers the values that exist
   * @param rows its ranges
   * @param usedWith the other setting that decides whether it is used
   */
  public Setting {
    offers = List.copyOf(offers);
    rows = List.copyOf(rows);
  }

  /**
   * Finds the range for a kind of source: the first row that names it, else that names the kind it
   * is like, else that is for any.
   *
   * @param source the kind of source; empty where none is declared
   * @param direction the sign of the stage's gain
   * @return the range, or empty if the setting has none
   */
  public Optional<TradeRange> range(Optional<SourceKind> source, RangeRow.Direction direction) {
    Optional<RangeRow> row = row(source, direction);
    return row.isPresent() ? Optional.of(row.get().range()) : Optional.empty();
  }

  /**
   * Finds the range for a kind of source, as {@link #range} does, and for whom it was given.
   *
   * @param source the kind of source; empty where none is declared
   * @param direction the sign of the stage's gain
   * @return the row, or empty if the setting has none
   */
  public Optional<RangeRow> row(Optional<SourceKind> source, RangeRow.Direction direction) {
    Optional<RangeRow> row = Optional.empty();
    if (source.isPresent()) {
      row = row(source.get().word(), direction);
      if (row.isEmpty() && source.get().like().isPresent()) {
        row = row(source.get().like().get(), direction);
      }
    }
    return row.isPresent() ? row : row("", direction);
  }

  /**
   * Asks whether it and another setting say one thing in two ways, so that only one can be written.
   *
   * @param other another setting of the same kind
   * @return whether one of them stands instead of the other, or both instead of a third
   */
  public boolean saysTheSameAs(Setting other) {
    return !name.equals(other.name()) && said().equals(other.said());
  }

  private String said() {
    return byOmission instanceof Default.InsteadOf instead ? instead.other() : name;
  }

  /**
   * Asks whether its decibels are the size of something, such as a knee, and no change of level.
   *
   * @return whether it can never be below 0; such an amount is written without a plus
   */
  public boolean isSize() {
    return low instanceof Limit.Fixed fixed && fixed.value() >= 0;
  }

  private Optional<RangeRow> row(String word, RangeRow.Direction direction) {
    // Asked of every value of a file, before this is compiled: no iterator.
    for (int i = 0; i < rows.size(); i++) {
      RangeRow row = rows.get(i);
      boolean isOfSource = word.isEmpty() ? row.sources().isEmpty() : row.sources().contains(word);
      boolean isOfDirection =
          row.direction() == RangeRow.Direction.ANY
              || direction == RangeRow.Direction.ANY
              || row.direction() == direction;
      if (isOfSource && isOfDirection) {
        return Optional.of(row);
      }
    }
    return Optional.empty();
  }
}
