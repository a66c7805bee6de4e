package chainwright.quantity;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/** A unit of the notation: its canonical symbol, its dimension and its size in the base unit. */
public enum Unit {
  /** Hertz. */
  HERTZ("Hz", Dimension.FREQUENCY, 1, "hertz"),
  /** Kilohertz. */
  KILOHERTZ("kHz", Dimension.FREQUENCY, 1000, "kilohertz"),
  /** Decibel. */
  DECIBEL("dB", Dimension.GAIN, 1, "decibels"),
  /** Decibel relative to a full-scale sine. */
  DBFS("dBFS", Dimension.DIGITAL_LEVEL, 1, "decibels full scale"),
  /** Decibel true peak. */
  DBTP("dBTP", Dimension.TRUE_PEAK_LEVEL, 1, "decibels true peak"),
  /** Decibel relative to 0.7746 V. */
  DBU("dBu", Dimension.ANALOGUE_LEVEL, 1, "decibels relative to 0.775 volts"),
  /** Loudness unit relative to full scale. */
  LUFS("LUFS", Dimension.LOUDNESS, 1, "loudness units full scale"),
  /** Loudness unit. */
  LU("LU", Dimension.LOUDNESS_DIFFERENCE, 1, "loudness units"),
  /** Decibel per octave. */
  DB_PER_OCTAVE("dB/oct", Dimension.SLOPE, 1, "decibels per octave"),
  /** To one. */
  TO_ONE(":1", Dimension.RATIO, 1, "to one"),
  /** Microsecond. */
  MICROSECOND("us", Dimension.TIME, 1e-6, "microseconds"),
  /** Millisecond. */
  MILLISECOND("ms", Dimension.TIME, 1e-3, "milliseconds"),
  /** Second. */
  SECOND("s", Dimension.TIME, 1, "seconds"),
  /** Sample. */
  SAMPLE("samples", Dimension.SAMPLES, 1, "samples"),
  /** Octave. */
  OCTAVE("oct", Dimension.BANDWIDTH, 1, "octaves"),
  /** Per cent. */
  PERCENT("%", Dimension.SHARE, 1, "per cent"),
  /** Bit. */
  BIT("bit", Dimension.WORD_LENGTH, 1, "bits"),
  /** Beats per minute. */
  BEATS_PER_MINUTE("bpm", Dimension.TEMPO, 1, "beats per minute"),
  /** Metre. */
  METRE("m", Dimension.DISTANCE, 1, "metres");

  /** Up to it, times the largest unit, every multiple of an eighth is a {@code double}. */
  private static final double MOST_EXACT = 1e10;

  private static final Map<String, Unit> BY_SPELLING = bySpelling();

  private final String symbol;
  private final Dimension dimension;
  private final double toBase;
  private final String spoken;

  Unit(String symbol, Dimension dimension, double toBase, String spoken) {
    this.symbol = symbol;
    this.dimension = dimension;
    this.toBase = toBase;
    this.spoken = spoken;
  }

  /**
   * Finds a unit by a spelling, such as "kHz", "khz", "k" or "µs"; letter case does not matter.
   *
   * @param spelling the unit as written
   * @return the unit, or empty if no unit is spelt so
   */
  public static Optional<Unit> parse(String spelling) {
    Unit exact = BY_SPELLING.get(spelling);
    return Optional.ofNullable(
        exact != null ? exact : BY_SPELLING.get(spelling.toLowerCase(Locale.ROOT)));
  }

  /**
   * Returns the spellings that {@link #parse} reads, in lower case, for readers of the notation
   * that cannot ask it.
   *
   * @return all of them, in alphabetical order
   */
  public static SortedSet<String> spellings() {
    SortedSet<String> spellings = new TreeSet<>();
    BY_SPELLING.keySet().forEach(spelling -> spellings.add(spelling.toLowerCase(Locale.ROOT)));
    return spellings;
  }

  /**
   * Returns the canonical spelling, such as "kHz".
   *
   * @return the symbol that the formatter writes
   */
  public String symbol() {
    return symbol;
  }

  /**
   * Returns what kind of value this unit measures.
   *
   * @return the dimension
   */
  public Dimension dimension() {
    return dimension;
  }

  /**
   * Returns how many base units of the dimension one of this unit is, such as 1000 for kHz.
   *
   * @return the factor to the base unit, above 0
   */
  public double toBase() {
    return toBase;
  }

  /**
   * Converts a value to the base unit, rounded once: 1.001 kHz is 1001 Hz to the last bit, so that
   * two spellings of one value are one value.
   *
   * @param value a value in this unit
   * @return the same in the base unit of the dimension; what is not finite stays as it is
   */
  public double toBase(double value) {
    if (toBase == 1 || !Double.isFinite(value)) {
      return value;
    }
    double eighths = value * 8;
    if (eighths == Math.rint(eighths) && value != 0 && Math.abs(value) <= MOST_EXACT) {
      // The value is the decimal that is written, and the factor is whole: one operation rounds
      // once.
      return toBase > 1 ? value * toBase : value / Math.rint(1 / toBase);
    }
    // The shortest decimal of the value is what its author wrote.
    return BigDecimal.valueOf(value).multiply(BigDecimal.valueOf(toBase)).doubleValue();
  }

  /**
   * Returns how the unit is said aloud, such as "decibels per octave".
   *
   * @return the spoken plural
   */
  public String spoken() {
    return spoken;
  }

  private static Map<String, Unit> bySpelling() {
    Map<String, Unit> map = new HashMap<>();
    for (Unit unit : values()) {
      map.put(unit.symbol, unit);
      map.put(unit.symbol.toLowerCase(Locale.ROOT), unit);
    }
    map.put("k", KILOHERTZ);
    map.put("hertz", HERTZ);
    map.put("kilohertz", KILOHERTZ);
    map.put("db/octave", DB_PER_OCTAVE);
    map.put("\u00b5s", MICROSECOND);
    map.put("\u03bcs", MICROSECOND);
    map.put("sec", SECOND);
    map.put("msec", MILLISECOND);
    map.put("sample", SAMPLE);
    map.put("octave", OCTAVE);
    map.put("octaves", OCTAVE);
    map.put("percent", PERCENT);
    map.put("bits", BIT);
    map.put("lkfs", LUFS);
    return Map.copyOf(map);
  }
}
