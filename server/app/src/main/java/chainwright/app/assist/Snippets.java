package chainwright.app.assist;

import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.catalogue.ValueText;
import chainwright.quantity.Dimension;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;

/** The forms of statements, with stops where something has to be chosen. */
final class Snippets {

  private Snippets() {}

  /**
   * A stage with what it needs and what is usually said of it, in usual values.
   *
   * @param kind the kind of stage
   * @param source the kind of source, if it is declared
   */
  static Snippet stage(StageKind kind, Optional<SourceKind> source) {
    Snippet snippet = Snippet.of().fixed(kind.word());
    for (Setting setting : kind.settings()) {
      if (isUsuallySaid(kind, setting)) {
        String name = setting.isPositional() ? " " : " " + setting.name() + " ";
        snippet = snippet.fixed(name).stop(usual(setting, source));
      }
    }
    return snippet.end();
  }

  /** What is needed, what needs no name, and what depends on the source. */
  private static boolean isUsuallySaid(StageKind kind, Setting setting) {
    if (setting.byOmission() instanceof Default.Required) {
      return true;
    }
    if (setting.byOmission() instanceof Default.InsteadOf) {
      return false;
    }
    if (setting.takes() instanceof Takes.Quality) {
      return kind.family() == Family.EQUALISER;
    }
    boolean dependsOnSource =
        setting.byOmission() instanceof Default.Amount
            && setting.rows().stream().anyMatch(row -> !row.sources().isEmpty());
    return setting.takes() instanceof Takes.InUnit && (setting.isPositional() || dependsOnSource);
  }

  /** What is offered first, else what holds anyway, else the middle of the cautious range. */
  private static String usual(Setting setting, Optional<SourceKind> source) {
    if (setting.takes() instanceof Takes.OneOf oneOf) {
      return oneOf.words().get(0);
    }
    Optional<TradeRange> range = setting.range(source, RangeRow.Direction.ANY);
    if (StageLine.isSpan(setting)) {
      return range
          .map(found -> ValueText.range(setting, found.usualLow(), found.usualHigh()))
          .orElse("");
    }
    if (range.isPresent() && range.get().offered().isPresent()) {
      return ValueText.of(setting, range.get().offered().getAsDouble());
    }
    if (setting.byOmission() instanceof Default.Amount amount) {
      return ValueText.of(setting, amount.value());
    }
    return range.map(found -> ValueText.of(setting, middle(setting, found))).orElse("");
  }

  /** A round value inside the cautious range; frequencies are halved as they are heard. */
  private static double middle(Setting setting, TradeRange range) {
    Optional<Double> existing =
        setting.offers().stream()
            .filter(offer -> offer >= range.cautiousLow() && offer <= range.cautiousHigh())
            .findFirst();
    if (existing.isPresent()) {
      return existing.get();
    }
    boolean isFrequency =
        setting.takes() instanceof Takes.InUnit takes
            && takes.unit().dimension() == Dimension.FREQUENCY;
    double middle =
        isFrequency
            ? Math.sqrt(range.cautiousLow() * range.cautiousHigh())
            : (range.cautiousLow() + range.cautiousHigh()) / 2;
    return new BigDecimal(middle).round(new MathContext(2)).doubleValue();
  }

  /** A word of the notation with what follows it; empty where the word alone is best. */
  static Optional<Snippet> word(String word) {
    Snippet begun = Snippet.of().fixed(word + " ");
    return switch (word) {
      case "import", "take", "note" -> Optional.of(begun.fixed("\"").stop("").fixed("\"").end());
      case "session" -> Optional.of(titled(begun).block());
      case "preset", "bus" -> Optional.of(titled(begun.stop("name").fixed(" ")).block());
      case "chain" ->
          Optional.of(
              titled(begun.stop("name").fixed(" "))
                  .fixed(" {\n\tsource ")
                  .stop("lead-vocal")
                  .fixed("\n\n\t")
                  .end()
                  .fixed("\n}"));
      case "alignment" -> Optional.of(begun.stop("0 dBu").fixed(" = ").stop("-18 dBFS").end());
      case "listen" ->
          Optional.of(
              begun.stop("0:31.2").fixed(" \"").stop("what to listen for").fixed("\"").end());
      case "insert" -> Optional.of(begun.fixed("\"").stop("device").fixed("\"").end());
      case "parallel" ->
          Optional.of(
              begun
                  .fixed("{\n\tpath \"")
                  .stop("dry")
                  .fixed("\"\n\tpath \"")
                  .stop("squashed")
                  .fixed("\" ")
                  .stop("-12 dB")
                  .fixed(" {\n\t\t")
                  .end()
                  .fixed("\n\t}\n}"));
      case "mid-side" -> Optional.of(begun.fixed("{\n\tside {\n\t\t").end().fixed("\n\t}\n}"));
      case "multiband" ->
          Optional.of(
              begun
                  .fixed("{\n\tband below ")
                  .stop("150 Hz")
                  .fixed(" {\n\t\t")
                  .end()
                  .fixed("\n\t}\n\tband above ")
                  .same(1)
                  .fixed("\n}"));
      case "during" -> Optional.of(begun.stop("0:31.2").fixed(" to ").stop("0:31.8").block());
      case "path" -> Optional.of(titled(begun).fixed(" ").stop("-12 dB").block());
      case "mid", "side", "side-chain" -> Optional.of(Snippet.of().fixed(word).block());
      default -> Optional.empty();
    };
  }

  /** A rule's name and the reason that has to follow it. */
  static Snippet rule(String code) {
    return Snippet.of().fixed(code + " \"").stop("why it is right here").fixed("\"").end();
  }

  private static Snippet titled(Snippet begun) {
    return begun.fixed("\"").stop("Title").fixed("\"");
  }
}
