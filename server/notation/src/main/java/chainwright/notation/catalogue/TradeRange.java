package chainwright.notation.catalogue;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What the trade calls cautious, usual and extreme for one setting; all values in the setting's
 * unit.
 *
 * @param cautiousLow the lower end of what rarely harms
 * @param cautiousHigh the upper end of what rarely harms
 * @param usualLow the lower end of the trade's range
 * @param usualHigh the upper end of the trade's range
 * @param extremeBelow at or below this a value is extreme; empty for nowhere
 * @param extremeAbove at or above this a value is extreme; empty for nowhere
 * @param offered what completion offers first; empty where it has to be computed
 * @param sources where it comes from; not empty
 * @param note what else to know, or empty text
 */
public record TradeRange(
    double cautiousLow,
    double cautiousHigh,
    double usualLow,
    double usualHigh,
    OptionalDouble extremeBelow,
    OptionalDouble extremeAbove,
    OptionalDouble offered,
    List<Citation> sources,
    String note) {

  /** Where a value lies. */
  public enum Verdict {
    /** Inside the cautious or the usual range. */
    USUAL,
    /** Outside the usual range, not yet extreme. */
    UNCOMMON,
    /** At or beyond the extreme mark. */
    EXTREME
  }

  /**
   * Copies the sources.
   *
   * @param cautiousLow the cautious lower end
   * @param cautiousHigh the cautious upper end
   * @param usualLow the usual lower end
   * @param usualHigh the usual upper end
   * @param extremeBelow the extreme mark below
   * @param extremeAbove the extreme mark above
   * @param offered what completion offers
   * @param sources where it comes from
   * @param note what else to know
   */
  public TradeRange {
    sources = List.copyOf(sources);
  }

  /**
   * Says where a value lies.
   *
   * @param value in the setting's unit
   * @return the verdict; a value inside the cautious range is usual even beyond the usual one
   */
  public Verdict verdict(double value) {
    if ((value >= cautiousLow && value <= cautiousHigh)
        || (value >= usualLow && value <= usualHigh)) {
      return Verdict.USUAL;
    }
    boolean isExtreme =
        (extremeBelow.isPresent() && value <= extremeBelow.getAsDouble())
            || (extremeAbove.isPresent() && value >= extremeAbove.getAsDouble());
    return isExtreme ? Verdict.EXTREME : Verdict.UNCOMMON;
  }
}
