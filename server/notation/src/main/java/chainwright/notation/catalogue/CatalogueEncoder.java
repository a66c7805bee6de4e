package chainwright.notation.catalogue;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/** Writes the compact form of a catalogue, which {@link Catalogue#load()} reads. */
public final class CatalogueEncoder {

  private final List<Integer> body = new ArrayList<>();
  private final Map<String, Integer> texts = new LinkedHashMap<>();
  private final Map<Double, Integer> numbers = new LinkedHashMap<>();
  private final Map<Citation, Integer> citations = new LinkedHashMap<>();
  private final Map<List<Integer>, Integer> citedTogether = new LinkedHashMap<>();
  private final Map<List<Integer>, Integer> kindsTogether = new LinkedHashMap<>();
  private final List<String> kindOrder = new ArrayList<>();

  private CatalogueEncoder() {}

  /**
   * Writes a catalogue; the same catalogue gives the same bytes.
   *
   * @param catalogue the catalogue
   * @return its compact form
   * @throws IllegalArgumentException if it holds more than 65535 texts or items of one list, or
   *     cites what it does not hold
   */
  public static byte[] encode(Catalogue catalogue) {
    CatalogueEncoder encoder = new CatalogueEncoder();
    encoder.catalogue(catalogue);
    try {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      encoder.writeTo(new DataOutputStream(bytes));
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void writeTo(DataOutputStream out) throws IOException {
    List<Integer> tables = new ArrayList<>();
    tables.add(citations.size());
    for (Citation citation : citations.keySet()) {
      tables.add(number(citation.key()));
      tables.add(number(citation.text()));
      tables.add(number(citation.howKnown()));
    }
    for (Map<List<Integer>, Integer> table : List.of(citedTogether, kindsTogether)) {
      tables.add(table.size());
      for (List<Integer> together : table.keySet()) {
        tables.add(together.size());
        tables.addAll(together);
      }
    }
    out.writeInt(CatalogueDecoder.MAGIC);
    writeShort(out, texts.size());
    for (String text : texts.keySet()) {
      byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
      writeShort(out, utf8.length);
      out.write(utf8);
    }
    writeShort(out, numbers.size());
    for (double number : numbers.keySet()) {
      out.writeDouble(number);
    }
    for (int item : tables) {
      writeShort(out, item);
    }
    for (int item : body) {
      writeShort(out, item);
    }
  }

  private static void writeShort(DataOutputStream out, int value) throws IOException {
    if (value < 0 || value > CatalogueDecoder.MOST) {
      throw new IllegalArgumentException(
          "a number must lie between 0 and " + CatalogueDecoder.MOST + ", but was " + value);
    }
    out.writeShort(value);
  }

  private void catalogue(Catalogue catalogue) {
    for (Citation citation : catalogue.citations()) {
      citations.put(citation, citations.size());
    }
    catalogue.sources().forEach(kind -> kindOrder.add(kind.word()));
    list(catalogue.sources(), this::source);
    list(catalogue.stages(), this::stage);
  }

  private void source(SourceKind kind) {
    text(kind.word());
    text(kind.title());
    optional(kind.lowestHz());
    text(kind.lowestNote());
    amount(kind.highestHz());
    text(kind.note());
    amount(kind.crestLowDb());
    amount(kind.crestHighDb());
    text(kind.spill());
    flag(kind.like().isPresent());
    kind.like().ifPresent(this::text);
    list(
        kind.zones(),
        zone -> {
          text(zone.name());
          amount(zone.lowHz());
          amount(zone.highHz());
        });
    cited(kind.citations());
  }

  private void stage(StageKind kind) {
    text(kind.word());
    text(kind.title());
    text(kind.family().name());
    body.add(kind.order());
    text(kind.says());
    text(kind.overdone());
    text(kind.place());
    list(kind.settings(), this::setting);
  }

  private void setting(Setting setting) {
    text(setting.name());
    takes(setting.takes());
    flag(setting.isPositional());
    text(setting.says());
    limit(setting.low());
    limit(setting.high());
    byOmission(setting.byOmission());
    list(setting.offers(), this::amount);
    list(setting.rows(), this::row);
    flag(setting.usedWith().isPresent());
    setting
        .usedWith()
        .ifPresent(
            used -> {
              text(used.setting());
              list(used.values(), this::text);
            });
  }

  private void takes(Takes takes) {
    if (takes instanceof Takes.InUnit inUnit) {
      letter('u');
      text(inUnit.unit().name());
      flag(inUnit.isSpan());
    } else if (takes instanceof Takes.OneOf oneOf) {
      letter('w');
      list(oneOf.words(), this::text);
    } else if (takes instanceof Takes.Quality) {
      letter('q');
    } else if (takes instanceof Takes.PlainNumber) {
      letter('c');
    } else if (takes instanceof Takes.Name) {
      letter('n');
    } else {
      letter('f');
    }
  }

  private void limit(Limit limit) {
    if (limit instanceof Limit.Fixed fixed) {
      letter('f');
      amount(fixed.value());
    } else if (limit instanceof Limit.OfSampleRate share) {
      letter('r');
      amount(share.share());
    } else if (limit instanceof Limit.OfSetting other) {
      letter('s');
      text(other.name());
    } else {
      letter('o');
    }
  }

  private void byOmission(Default byOmission) {
    if (byOmission instanceof Default.Amount amount) {
      letter('n');
      amount(amount.value());
    } else if (byOmission instanceof Default.Word word) {
      letter('w');
      text(word.word());
    } else if (byOmission instanceof Default.InsteadOf instead) {
      letter('i');
      text(instead.other());
    } else if (byOmission instanceof Default.Computed computed) {
      letter('c');
      text(computed.how());
    } else if (byOmission instanceof Default.Required) {
      letter('r');
    } else {
      letter('a');
    }
  }

  private void row(RangeRow row) {
    // A set has no order of its own: the order of the source kinds keeps the bytes the same.
    List<Integer> kinds =
        kindOrder.stream().filter(row.sources()::contains).map(this::number).toList();
    body.add(kindsTogether.computeIfAbsent(kinds, key -> kindsTogether.size()));
    text(row.direction().name());
    TradeRange range = row.range();
    amount(range.cautiousLow());
    amount(range.cautiousHigh());
    amount(range.usualLow());
    amount(range.usualHigh());
    optional(range.extremeBelow());
    optional(range.extremeAbove());
    optional(range.offered());
    cited(range.sources());
    text(range.note());
  }

  private void cited(List<Citation> cited) {
    List<Integer> together = new ArrayList<>();
    for (Citation citation : cited) {
      Integer number = citations.get(citation);
      if (number == null) {
        throw new IllegalArgumentException(
            "the catalogue does not hold the citation " + citation.key());
      }
      together.add(number);
    }
    body.add(citedTogether.computeIfAbsent(together, key -> citedTogether.size()));
  }

  private void text(String text) {
    body.add(number(text));
  }

  private int number(String text) {
    return texts.computeIfAbsent(text, key -> texts.size());
  }

  private void amount(double amount) {
    body.add(numbers.computeIfAbsent(amount, key -> numbers.size()));
  }

  private void optional(OptionalDouble amount) {
    flag(amount.isPresent());
    amount.ifPresent(this::amount);
  }

  private void letter(char letter) {
    body.add((int) letter);
  }

  private void flag(boolean flag) {
    body.add(flag ? 1 : 0);
  }

  private <T> void list(List<T> items, Consumer<? super T> write) {
    body.add(items.size());
    items.forEach(write);
  }
}
