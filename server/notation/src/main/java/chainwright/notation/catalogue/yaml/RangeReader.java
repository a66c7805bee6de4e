package chainwright.notation.catalogue.yaml;

import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.Limit;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.RangeRow.Direction;
import chainwright.notation.catalogue.TradeRange;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Reads the ranges of a setting.
 *
 * <p>Checked: cautious and usual overlap and lie between the extreme marks, those lie inside what
 * is allowed at all, the offered value is cautious or usual, no kind of source has two rows, and
 * the last row is for any source.
 */
final class RangeReader {

  private final Map<String, Citation> citations;
  private final Set<String> sourceKinds;

  RangeReader(Map<String, Citation> citations, Set<String> sourceKinds) {
    this.citations = citations;
    this.sourceKinds = sourceKinds;
  }

  List<RangeRow> read(YamlValue list, Limit low, Limit high, List<Double> offers) {
    List<RangeRow> rows = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (YamlValue entry : list.items()) {
      RangeRow row = row(entry, low, high, offers);
      Set<String> kinds = row.sources().isEmpty() ? Set.of("any") : row.sources();
      for (String kind : kinds) {
        if (!seen.add(kind + " " + row.direction())) {
          throw entry.fault("`" + kind + "` has a row already");
        }
      }
      rows.add(row);
    }
    if (rows.isEmpty() || !rows.get(rows.size() - 1).sources().isEmpty()) {
      throw list.fault("the last row must be for any source");
    }
    boolean isCutGiven = seen.contains("any " + Direction.CUT);
    boolean isBoostGiven = seen.contains("any " + Direction.BOOST);
    if (!seen.contains("any " + Direction.ANY) && !(isCutGiven && isBoostGiven)) {
      throw list.fault("a row for any source is needed for cut and for boost");
    }
    return rows;
  }

  private RangeRow row(YamlValue entry, Limit low, Limit high, List<Double> offers) {
    entry.requireKeys(
        Set.of("for", "when", "cautious", "usual", "below", "above", "default", "source", "note"));
    TradeRange range = range(entry);
    checkNesting(entry, range, low, high);
    if (range.offered().isPresent()) {
      double offered = range.offered().getAsDouble();
      YamlValue place = entry.need("default");
      SettingReader.requireAllowed(place, offered, low, high, offers);
      if (range.verdict(offered) != TradeRange.Verdict.USUAL) {
        throw place.fault("is neither cautious nor usual: " + offered);
      }
    }
    return new RangeRow(sources(entry.need("for")), direction(entry), range);
  }

  private TradeRange range(YamlValue entry) {
    double[] cautious = entry.need("cautious").pair();
    double[] usual = entry.need("usual").pair();
    return new TradeRange(
        cautious[0],
        cautious[1],
        usual[0],
        usual[1],
        optional(entry, "below"),
        optional(entry, "above"),
        optional(entry, "default"),
        CatalogueReader.citations(entry.need("source"), citations),
        entry.field("note").map(YamlValue::text).orElse(""));
  }

  private static void checkNesting(YamlValue entry, TradeRange range, Limit low, Limit high) {
    double floor = low instanceof Limit.Fixed fixed ? fixed.value() : Double.NEGATIVE_INFINITY;
    double roof = high instanceof Limit.Fixed fixed ? fixed.value() : Double.POSITIVE_INFINITY;
    double below = range.extremeBelow().orElse(floor);
    double above = range.extremeAbove().orElse(roof);
    if (below < floor) {
      throw entry.need("below").fault("lies outside `hard`: " + below);
    }
    if (above > roof) {
      throw entry.need("above").fault("lies outside `hard`: " + above);
    }
    requireBetween(entry.need("cautious"), range.cautiousLow(), range.cautiousHigh(), below, above);
    requireBetween(entry.need("usual"), range.usualLow(), range.usualHigh(), below, above);
    if (range.cautiousLow() > range.usualHigh() || range.usualLow() > range.cautiousHigh()) {
      throw entry.need("cautious").fault("has nothing in common with `usual`");
    }
  }

  private static void requireBetween(
      YamlValue place, double low, double high, double below, double above) {
    if (low < below || high > above) {
      throw place.fault(
          "[" + low + ", " + high + "] does not lie between " + below + " and " + above);
    }
  }

  private Set<String> sources(YamlValue value) {
    if (value.isText()) {
      if (!value.text().equals("any")) {
        throw value.fault("must be a list of source kinds or any, but was " + value.text());
      }
      return Set.of();
    }
    Set<String> kinds = new LinkedHashSet<>();
    for (YamlValue kind : value.items()) {
      if (!sourceKinds.contains(kind.text())) {
        throw kind.fault("there is no source kind `" + kind.text() + "`");
      }
      kinds.add(kind.text());
    }
    if (kinds.isEmpty()) {
      throw value.fault("at least one source kind is needed");
    }
    return kinds;
  }

  private static Direction direction(YamlValue entry) {
    if (entry.field("when").isEmpty()) {
      return Direction.ANY;
    }
    return switch (entry.need("when").text()) {
      case "cut" -> Direction.CUT;
      case "boost" -> Direction.BOOST;
      default -> throw entry.need("when").fault("must be cut or boost");
    };
  }

  private static OptionalDouble optional(YamlValue entry, String key) {
    return entry
        .field(key)
        .map(value -> OptionalDouble.of(value.number()))
        .orElse(OptionalDouble.empty());
  }
}
