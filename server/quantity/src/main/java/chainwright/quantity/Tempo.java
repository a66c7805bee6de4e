package chainwright.quantity;

/**
 * A musical speed, such as 92 bpm.
 *
 * @param beatsPerMinute the speed [beats/min], finite and above 0
 */
public record Tempo(double beatsPerMinute) implements Quantity {

  /**
   * Checks the value.
   *
   * @param beatsPerMinute the speed [beats/min]
   * @throws IllegalArgumentException if the value is not finite or not above 0
   */
  public Tempo {
    Quantity.requireFinite("the tempo", beatsPerMinute);
    if (beatsPerMinute <= 0) {
      throw new IllegalArgumentException("the tempo must be above 0, but was " + beatsPerMinute);
    }
  }

  @Override
  public double baseValue() {
    return beatsPerMinute;
  }

  @Override
  public Dimension dimension() {
    return Dimension.TEMPO;
  }

  @Override
  public String toString() {
    return NumberText.format(beatsPerMinute) + " bpm";
  }
}
