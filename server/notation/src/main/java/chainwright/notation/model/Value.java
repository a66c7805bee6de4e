package chainwright.notation.model;

import chainwright.quantity.Quantity;
import chainwright.quantity.QuantityRange;

/** The value of a setting. */
public sealed interface Value {

  /**
   * A quantity.
   *
   * @param quantity such as 66 Hz
   */
  record Of(Quantity quantity) implements Value {
    @Override
    public String toString() {
      return quantity.toString();
    }
  }

  /**
   * A range of quantities.
   *
   * @param low its lower end
   * @param high its upper end
   */
  record Span(Quantity low, Quantity high) implements Value {
    @Override
    public String toString() {
      return new QuantityRange(low, high).toString();
    }
  }

  /**
   * A word of a closed list.
   *
   * @param word such as "bilinear"
   */
  record Word(String word) implements Value {
    @Override
    public String toString() {
      return word;
    }
  }

  /**
   * The name of something defined elsewhere.
   *
   * @param name such as "kick"
   */
  record Reference(String name) implements Value {
    @Override
    public String toString() {
      return name;
    }
  }

  /** The word alone says it. */
  record Flag() implements Value {
    @Override
    public String toString() {
      return "yes";
    }
  }
}
