package chainwright.notation.catalogue;

import chainwright.quantity.Unit;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Reads the compact form of the catalogue.
 *
 * <p>Behind the magic number stand tables: each text, each number, the citations, each group of
 * citations and of source kinds that stand together. Then come the records, field by field, all as
 * two-byte numbers: places in the tables, lengths of lists, flags, and one letter for a kind of a
 * sealed type.
 *
 * <p>Plain loops over plain bytes: this runs while an editor starts, before anything is compiled;
 * written with lambdas, the first reading took 1.7 times as long (40 ms against 23 ms on a busy
 * machine with two cores).
 */
final class CatalogueDecoder {

  /** First four bytes, with the version of the form. */
  static final int MAGIC = 0x43484C31;

  /** The largest number, length of a list or place in a table. */
  static final int MOST = 0xFFFF;

  private static final int BYTE = 0xFF;

  private final byte[] bytes;
  private final String[] texts;
  private final double[] numbers;
  private final Citation[] citations;
  private final Object[] citedTogether;
  private final Object[] kindsTogether;
  private int position;

  private CatalogueDecoder(byte[] bytes) {
    this.bytes = bytes;
    if ((count() << Short.SIZE | count()) != MAGIC) {
      throw new IllegalArgumentException("these bytes are no catalogue");
    }
    texts = new String[count()];
    for (int i = 0; i < texts.length; i++) {
      int length = count();
      texts[i] = new String(bytes, position, length, StandardCharsets.UTF_8);
      position += length;
    }
    numbers = new double[count()];
    for (int i = 0; i < numbers.length; i++) {
      long high = (long) count() << Short.SIZE | count();
      numbers[i] =
          Double.longBitsToDouble(high << Integer.SIZE | (long) count() << Short.SIZE | count());
    }
    citations = new Citation[count()];
    for (int i = 0; i < citations.length; i++) {
      citations[i] = new Citation(text(), text(), text());
    }
    citedTogether = new Object[count()];
    for (int i = 0; i < citedTogether.length; i++) {
      Citation[] cited = new Citation[count()];
      for (int k = 0; k < cited.length; k++) {
        cited[k] = citations[count()];
      }
      citedTogether[i] = List.of(cited);
    }
    kindsTogether = new Object[count()];
    for (int i = 0; i < kindsTogether.length; i++) {
      kindsTogether[i] = Set.of(words());
    }
  }

  /**
   * Reads a catalogue.
   *
   * @param bytes the compact form
   * @return the catalogue
   * @throws IllegalArgumentException if the bytes are something else
   */
  static Catalogue decode(byte[] bytes) {
    try {
      return new CatalogueDecoder(bytes).catalogue();
    } catch (IndexOutOfBoundsException e) {
      throw new IllegalArgumentException("the catalogue ends too early", e);
    }
  }

  private Catalogue catalogue() {
    SourceKind[] sources = new SourceKind[count()];
    for (int i = 0; i < sources.length; i++) {
      sources[i] = source();
    }
    StageKind[] stages = new StageKind[count()];
    for (int i = 0; i < stages.length; i++) {
      stages[i] = stage();
    }
    return new Catalogue(List.of(stages), List.of(sources), List.of(citations));
  }

  private SourceKind source() {
    return new SourceKind(
        text(),
        text(),
        optional(),
        text(),
        number(),
        text(),
        number(),
        number(),
        text(),
        flag() ? Optional.of(text()) : Optional.empty(),
        zones(),
        cited());
  }

  private List<Zone> zones() {
    Zone[] zones = new Zone[count()];
    for (int i = 0; i < zones.length; i++) {
      zones[i] = new Zone(text(), number(), number());
    }
    return List.of(zones);
  }

  private StageKind stage() {
    return new StageKind(
        text(), text(), Family.valueOf(text()), count(), text(), text(), text(), settings());
  }

  private List<Setting> settings() {
    Setting[] settings = new Setting[count()];
    for (int i = 0; i < settings.length; i++) {
      settings[i] =
          new Setting(
              text(),
              takes(),
              flag(),
              text(),
              limit(),
              limit(),
              byOmission(),
              offers(),
              rows(),
              usedWith());
    }
    return List.of(settings);
  }

  private Optional<UsedWith> usedWith() {
    return flag() ? Optional.of(new UsedWith(text(), List.of(words()))) : Optional.empty();
  }

  private Takes takes() {
    return switch (count()) {
      case 'u' -> new Takes.InUnit(Unit.valueOf(text()), flag());
      case 'q' -> new Takes.Quality();
      case 'c' -> new Takes.PlainNumber();
      case 'w' -> new Takes.OneOf(List.of(words()));
      case 'n' -> new Takes.Name();
      case 'f' -> new Takes.Flag();
      default -> throw unknown();
    };
  }

  private Limit limit() {
    return switch (count()) {
      case 'o' -> new Limit.Open();
      case 'f' -> new Limit.Fixed(number());
      case 'r' -> new Limit.OfSampleRate(number());
      case 's' -> new Limit.OfSetting(text());
      default -> throw unknown();
    };
  }

  private Default byOmission() {
    return switch (count()) {
      case 'r' -> new Default.Required();
      case 'a' -> new Default.Absent();
      case 'n' -> new Default.Amount(number());
      case 'w' -> new Default.Word(text());
      case 'c' -> new Default.Computed(text());
      case 'i' -> new Default.InsteadOf(text());
      default -> throw unknown();
    };
  }

  private List<RangeRow> rows() {
    RangeRow[] rows = new RangeRow[count()];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = new RangeRow(kinds(), RangeRow.Direction.valueOf(text()), range());
    }
    return List.of(rows);
  }

  private TradeRange range() {
    return new TradeRange(
        number(),
        number(),
        number(),
        number(),
        optional(),
        optional(),
        optional(),
        cited(),
        text());
  }

  /** The groups were made as lists of citations, here and nowhere else. */
  @SuppressWarnings("unchecked")
  private List<Citation> cited() {
    return (List<Citation>) citedTogether[count()];
  }

  /** The groups were made as sets of words, here and nowhere else. */
  @SuppressWarnings("unchecked")
  private Set<String> kinds() {
    return (Set<String>) kindsTogether[count()];
  }

  private List<Double> offers() {
    Double[] offers = new Double[count()];
    for (int i = 0; i < offers.length; i++) {
      offers[i] = number();
    }
    return List.of(offers);
  }

  private String[] words() {
    String[] words = new String[count()];
    for (int i = 0; i < words.length; i++) {
      words[i] = text();
    }
    return words;
  }

  private String text() {
    return texts[count()];
  }

  private double number() {
    return numbers[count()];
  }

  private OptionalDouble optional() {
    return flag() ? OptionalDouble.of(number()) : OptionalDouble.empty();
  }

  private boolean flag() {
    return count() != 0;
  }

  private int count() {
    int value = (bytes[position] & BYTE) << Byte.SIZE | (bytes[position + 1] & BYTE);
    position += Short.BYTES;
    return value;
  }

  private static IllegalArgumentException unknown() {
    return new IllegalArgumentException("the catalogue is of another version");
  }
}
