package chainwright.app.assist;

import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.SyntaxKind;
import chainwright.quantity.Dimension;
import chainwright.quantity.Unit;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** How far the line of a stage is written: which settings it has, and what is wanted next. */
final class StageLine {

  /** What has to come next. */
  enum Wanted {
    /** A setting or a clause. */
    ANYTHING,
    /** The value of the open setting. */
    VALUE,
    /** A new name, or a reason: nothing that could be known. */
    OWN_WORDS,
    /** The name of a rule. */
    RULE
  }

  private final StageKind kind;
  private final Set<String> written = new HashSet<>();
  private final Set<String> clauses = new HashSet<>();
  private Optional<Setting> open = Optional.empty();
  private Wanted wanted = Wanted.ANYTHING;
  private RangeRow.Direction direction = RangeRow.Direction.ANY;

  private StageLine(StageKind kind) {
    this.kind = kind;
  }

  /** Reads what stands before the caret's word; what stands behind it counts as written, too. */
  static StageLine of(StageKind kind, List<Item> before, List<Item> after) {
    StageLine line = new StageLine(kind);
    before.forEach(line::read);
    StageLine behind = new StageLine(kind);
    after.forEach(behind::read);
    line.written.addAll(behind.written);
    line.clauses.addAll(behind.clauses);
    if (line.direction == RangeRow.Direction.ANY) {
      line.direction = behind.direction;
    }
    return line;
  }

  Wanted wanted() {
    return wanted;
  }

  /** The setting whose value is being written. */
  Optional<Setting> open() {
    return open;
  }

  /** Whether a setting is written, or another that says the same in another way. */
  boolean isWritten(Setting setting) {
    for (Setting one : kind.settings()) {
      boolean isSame = one.name().equals(setting.name()) || one.saysTheSameAs(setting);
      if (isSame && written.contains(one.name())) {
        return true;
      }
    }
    return false;
  }

  boolean hasClause(String word) {
    return clauses.contains(word);
  }

  /** Whether a label or another clause has ended the settings. */
  boolean hasClauses() {
    return !clauses.isEmpty();
  }

  /** Which way the stage turns the level, by its gain; any where none is written. */
  RangeRow.Direction direction() {
    return direction;
  }

  private void read(Item item) {
    if (item instanceof Item.Word word) {
      readWord(word.text());
    } else if (item instanceof Item.Amount amount) {
      readAmount(amount);
    } else if (item instanceof Item.Range range) {
      Optional<Setting> setting = open.or(() -> positional(dimension(range), true));
      boolean isWhole = dimension(range).isPresent();
      setting.filter(one -> isWhole).ifPresent(one -> close(one));
    } else if (item instanceof Item.Text && wanted == Wanted.OWN_WORDS) {
      wanted = Wanted.ANYTHING;
    }
  }

  private void readWord(String word) {
    if (wanted == Wanted.RULE) {
      wanted = Wanted.OWN_WORDS;
      return;
    }
    if (wanted == Wanted.OWN_WORDS) {
      wanted = Wanted.ANYTHING;
      return;
    }
    boolean takesWord =
        open.filter(one -> one.takes() instanceof Takes.OneOf || one.takes() instanceof Takes.Name)
            .isPresent();
    if (takesWord) {
      close(open.orElseThrow());
      return;
    }
    switch (word) {
      case "as", "deliberate" -> {
        clauses.add(word);
        wanted = word.equals("as") ? Wanted.OWN_WORDS : Wanted.RULE;
      }
      case "bypassed" -> clauses.add(word);
      default -> readSetting(word);
    }
  }

  private void readSetting(String word) {
    Optional<Setting> named = kind.setting(word);
    if (named.isPresent() && named.get().takes() instanceof Takes.Flag) {
      close(named.get());
    } else if (named.isPresent()) {
      written.add(word);
      open = named;
      wanted = Wanted.VALUE;
    } else {
      kind.settings().stream()
          .filter(Setting::isPositional)
          .filter(one -> one.takes() instanceof Takes.OneOf oneOf && oneOf.words().contains(word))
          .findFirst()
          .ifPresent(this::close);
    }
  }

  private void readAmount(Item.Amount amount) {
    Optional<Dimension> dimension = dimension(amount);
    boolean isPlain =
        open.filter(
                one ->
                    one.takes() instanceof Takes.Quality
                        || one.takes() instanceof Takes.PlainNumber
                        || one.takes() instanceof Takes.OneOf)
            .isPresent();
    Optional<Setting> setting =
        open.or(() -> positional(dimension, false)).or(() -> positional(dimension, true));
    boolean isWhole = isPlain || dimension.isPresent();
    boolean isGain = setting.filter(one -> one.name().equals("gain")).isPresent();
    if (isGain) {
      boolean isCut = "-\u2212\u2013".indexOf(amount.number().charAt(0)) >= 0;
      direction = isCut ? RangeRow.Direction.CUT : RangeRow.Direction.BOOST;
    }
    if (setting.isPresent() && isWhole) {
      if (isSpan(setting.get())) {
        open = setting;
        wanted = Wanted.VALUE;
        written.add(setting.get().name());
      } else {
        close(setting.get());
      }
    }
  }

  private void close(Setting setting) {
    written.add(setting.name());
    open = Optional.empty();
    wanted = Wanted.ANYTHING;
  }

  private Optional<Setting> positional(Optional<Dimension> dimension, boolean isSpan) {
    return kind.settings().stream()
        .filter(Setting::isPositional)
        .filter(one -> isSpan(one) == isSpan)
        .filter(
            one ->
                one.takes() instanceof Takes.InUnit takes
                    && dimension.filter(takes.unit().dimension()::equals).isPresent())
        .findFirst();
  }

  static boolean isSpan(Setting setting) {
    return setting.takes() instanceof Takes.InUnit takes && takes.isSpan();
  }

  private static Optional<Dimension> dimension(Item.Range range) {
    return dimension(range.high()).or(() -> dimension(range.low()));
  }

  /** What an amount is by its unit; a number with a colon is a ratio, or a time on a clock. */
  static Optional<Dimension> dimension(Item.Amount amount) {
    if (amount.kind() == SyntaxKind.COLON_NUMBER) {
      int behind = amount.number().length() - amount.number().indexOf(':') - 1;
      return Optional.of(behind == 1 ? Dimension.RATIO : Dimension.TIME);
    }
    return amount.unit().flatMap(Unit::parse).map(Unit::dimension);
  }
}
