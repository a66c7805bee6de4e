package chainwright.notation.lowering;

import chainwright.quantity.Dimension;
import chainwright.quantity.Unit;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/** What a misspelt unit may have meant, among the units that a place can take. */
final class UnitWords {

  private UnitWords() {}

  /** Returns the symbols of some dimensions. */
  static List<String> symbols(Collection<Dimension> dimensions) {
    Set<String> symbols = new LinkedHashSet<>();
    for (Unit unit : Unit.values()) {
      if (dimensions.contains(unit.dimension())) {
        symbols.add(unit.symbol());
      }
    }
    return List.copyOf(symbols);
  }

  /** Returns the symbols of the units that are near to a word, written or said, nearest first. */
  static List<String> near(String word, Collection<Dimension> dimensions) {
    Map<String, String> symbols = new LinkedHashMap<>();
    for (Unit unit : Unit.values()) {
      if (dimensions.contains(unit.dimension())) {
        symbols.put(unit.symbol(), unit.symbol());
        symbols.put(unit.spoken(), unit.symbol());
      }
    }
    for (String spelling : Unit.spellings()) {
      Unit.parse(spelling)
          .filter(unit -> dimensions.contains(unit.dimension()))
          .ifPresent(unit -> symbols.putIfAbsent(spelling, unit.symbol()));
    }
    return Nearest.to(word, symbols.keySet()).stream()
        .map(symbols::get)
        .filter(Objects::nonNull)
        .distinct()
        .toList();
  }
}
