package chainwright.notation.catalogue;

import chainwright.quantity.Dimension;
import chainwright.quantity.NumberText;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.Quantity;
import chainwright.quantity.QuantityRange;
import chainwright.quantity.Unit;
import java.util.List;

/**
 * Spells the values of settings, in the one way in which hovers, pages, proposals and findings do.
 *
 * <p>A change of level bears its sign, "+2 dB"; what can never be below 0, such as a knee, has
 * none, and a quality factor is a bare number, since its name stands before it.
 */
public final class ValueText {

  private static final int THOUSAND = 1000;

  private ValueText() {}

  /**
   * Spells a value.
   *
   * @param setting the setting
   * @param value a number in the setting's unit, finite
   * @return such as "3.1 kHz", "+2 dB", "0.7" or "3:1", as it can be written behind the name
   * @throws IllegalArgumentException if the setting's unit has no such value
   */
  public static String of(Setting setting, double value) {
    return setting.takes() instanceof Takes.InUnit takes
        ? of(setting, quantity(takes, value))
        : NumberText.format(value);
  }

  /**
   * Spells a value that was written or computed.
   *
   * @param setting the setting
   * @param quantity its value
   * @return such as "3.1 kHz", as it can be written behind the name
   */
  public static String of(Setting setting, Quantity quantity) {
    return plain(setting, quantity, quantity.toString());
  }

  /**
   * Spells a range; the unit stands once where both ends read in it.
   *
   * @param setting the setting
   * @param low the lower end, in the setting's unit, finite
   * @param high the upper end, in the setting's unit, finite
   * @return such as "5.5 to 9 kHz" or "-6 to +4 dB"; one value where both ends are the same
   * @throws IllegalArgumentException if the setting's unit has no such value
   */
  public static String range(Setting setting, double low, double high) {
    if (setting.takes() instanceof Takes.InUnit takes) {
      return range(setting, quantity(takes, low), quantity(takes, high));
    }
    return low == high ? of(setting, low) : of(setting, low) + " to " + of(setting, high);
  }

  /**
   * Spells a range that was written.
   *
   * @param setting the setting
   * @param low the lower end
   * @param high the upper end, of the same dimension
   * @return such as "5.5 to 9 kHz"; one value where both ends are the same
   * @throws IllegalArgumentException if the ends are of two dimensions
   */
  public static String range(Setting setting, Quantity low, Quantity high) {
    return plain(setting, high, new QuantityRange(low, high).toString());
  }

  /**
   * Spells the only values that a setting can have.
   *
   * @param setting a setting with such values
   * @return such as "6, 12 or 18 dB/oct"
   */
  public static String offers(Setting setting) {
    List<String> spelt = setting.offers().stream().map(offer -> of(setting, offer)).toList();
    int last = spelt.size() - 1;
    String unit = afterNumber(spelt.get(last));
    boolean isShared = spelt.stream().allMatch(one -> afterNumber(one).equals(unit));
    List<String> first =
        spelt.subList(0, last).stream()
            .map(one -> isShared ? one.substring(0, one.length() - unit.length()) : one)
            .toList();
    return (last > 0 ? String.join(", ", first) + " or " : "") + spelt.get(last);
  }

  /**
   * Returns the unit in which a value reads best.
   *
   * @param setting a setting that takes a unit
   * @param value a number in the setting's unit
   * @return such as kilohertz for 3100 Hz
   * @throws IllegalArgumentException if the setting takes no unit
   */
  public static Unit unit(Setting setting, double value) {
    if (!(setting.takes() instanceof Takes.InUnit takes)) {
      throw new IllegalArgumentException("`" + setting.name() + "` takes no unit");
    }
    boolean isLarge = Math.abs(value) >= THOUSAND;
    return switch (takes.unit()) {
      case HERTZ -> isLarge ? Unit.KILOHERTZ : Unit.HERTZ;
      case MILLISECOND -> isLarge ? Unit.SECOND : Unit.MILLISECOND;
      default -> takes.unit();
    };
  }

  private static String afterNumber(String spelt) {
    int blank = spelt.indexOf(' ');
    return blank < 0 ? "" : spelt.substring(blank);
  }

  private static Quantity quantity(Takes.InUnit takes, double value) {
    return Quantity.of(takes.unit().dimension(), takes.unit().toBase(value));
  }

  private static String plain(Setting setting, Quantity quantity, String text) {
    if (quantity instanceof QualityFactor) {
      return text.substring(text.indexOf(' ') + 1);
    }
    return quantity.dimension() == Dimension.GAIN && setting.isSize()
        ? text.replace("+", "")
        : text;
  }
}
