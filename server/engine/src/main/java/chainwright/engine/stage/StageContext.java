package chainwright.engine.stage;

import chainwright.dsp.filter.Curve;
import chainwright.dsp.filter.EqualiserPrototypes;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Value;
import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import chainwright.quantity.SampleRate;
import chainwright.quantity.Slope;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a stage has to know to be designed.
 *
 * @param settings its settings; what is not written has its default
 * @param rate the sample rate
 * @param source the kind of source, if declared
 * @param lowestHz the lowest fundamental [Hz], declared or usual for the source; empty if unknown
 */
public record StageContext(
    Settings settings, SampleRate rate, Optional<SourceKind> source, OptionalDouble lowestHz) {

  /** The speed of sound in air at 20 °C [m/s]. Source: textbooks; from memory. */
  private static final double SPEED_OF_SOUND = 343;

  /**
   * Returns a number in use, in its base unit.
   *
   * @param name the setting's name
   * @return such as 0.012 for 12 ms
   * @throws IllegalArgumentException if the setting has no value
   */
  public double number(String name) {
    Optional<Double> number = settings.number(name);
    if (number.isEmpty()) {
      throw new IllegalArgumentException("`" + name + "` has no value");
    }
    return number.get();
  }

  /**
   * Returns a number in use, or another where there is none.
   *
   * @param name the setting's name
   * @param otherwise the number that holds without it
   * @return the number
   */
  public double number(String name, double otherwise) {
    return settings.number(name).orElse(otherwise);
  }

  /**
   * Asks whether a setting's word is this one.
   *
   * @param name the setting's name
   * @param word the word
   * @return whether it is in use
   */
  public boolean is(String name, String word) {
    Optional<String> used = settings.word(name);
    return used.isPresent() && used.get().equals(word);
  }

  /**
   * Returns a frequency in use.
   *
   * @param name the setting's name
   * @return the frequency
   * @throws IllegalArgumentException if the setting has no value
   */
  public Frequency frequency(String name) {
    return Frequency.ofHertz(number(name));
  }

  /**
   * Returns a time in use as a whole number of frames.
   *
   * @param name the setting's name, of a time [s]
   * @return the nearest number of frames
   * @throws IllegalArgumentException if the setting has no value
   */
  public int frames(String name) {
    return (int) Math.round(number(name) * rate.hertz());
  }

  /**
   * Returns a span in use, such as a band.
   *
   * @param name the setting's name
   * @return its two ends
   * @throws IllegalArgumentException if the setting has no span
   */
  public Value.Span span(String name) {
    return settings
        .value(name)
        .filter(Value.Span.class::isInstance)
        .map(Value.Span.class::cast)
        .orElseThrow(() -> new IllegalArgumentException("`" + name + "` has no span"));
  }

  /**
   * Returns the gain in use.
   *
   * @param name the setting's name
   * @return the gain
   * @throws IllegalArgumentException if the setting has no value
   */
  public Decibels decibels(String name) {
    return new Decibels(number(name));
  }

  /**
   * Returns the slope in use.
   *
   * @return the slope
   * @throws IllegalArgumentException if the setting has no value
   */
  public Slope slope() {
    return new Slope(number("slope"));
  }

  /**
   * Returns the quality factor in use.
   *
   * @return the factor
   * @throws IllegalArgumentException if the setting has no value
   */
  public QualityFactor quality() {
    return new QualityFactor(number("Q"));
  }

  /**
   * Returns the quality factor of a shelf, written as such or as a slope.
   *
   * @return the factor
   * @throws IllegalArgumentException if no real filter has that slope at the shelf's gain
   */
  public QualityFactor shelfQuality() {
    Optional<Double> steepness = settings.number("slope");
    return steepness.isPresent()
        ? EqualiserPrototypes.shelfQuality(steepness.get(), decibels("gain"))
        : quality();
  }

  /**
   * Returns how much later a stage sounds: its time, or that of its samples or of the air.
   *
   * @return the time [s]; below 0 for earlier, 0 where nothing is written
   */
  public double delaySeconds() {
    return settings
        .number("time")
        .or(() -> settings.number("samples").map(samples -> samples / rate.hertz()))
        .or(() -> settings.number("distance").map(metres -> metres / SPEED_OF_SOUND))
        .orElse(0.0);
  }

  /**
   * Returns the curve in use.
   *
   * @return analogue unless {@code curve bilinear} is written
   */
  public Curve curve() {
    return is("curve", "bilinear") ? Curve.BILINEAR : Curve.ANALOGUE;
  }
}
