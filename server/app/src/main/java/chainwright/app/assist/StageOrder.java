package chainwright.app.assist;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.StageKind;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Says which stages make sense at a place, by the usual order of the catalogue. Filters and
 * equalisers are usual before dynamics, for correction, and after them, for tone; everything else
 * has one place.
 *
 * @param catalogue the trade's knowledge
 * @param around what stands above and below
 */
record StageOrder(Catalogue catalogue, WrittenLine.Surroundings around) {

  /** From here on in the catalogue's order a level is finished: clippers, limiters, delivery. */
  private static final int FINISHING = 85;

  /** How far behind a stage of dynamics its neighbours in the order are still named first. */
  private static final int NEIGHBOURS = 5;

  /** How well a stage fits. */
  enum Fit {
    /** It stands here usually. */
    HERE,
    /** One of its kind stands above already. */
    TWICE,
    /** It usually stands further down. */
    LATER,
    /** It usually stands further up. */
    EARLIER
  }

  /** A stage, how well it fits, and why; lower numbers come first. */
  record Ranked(StageKind kind, Fit fit, int number, String reason) {}

  /**
   * What the order depends on.
   *
   * @param above the words above
   * @param last the stage above that stands last in the usual order
   * @param next the stage below that stands first in it and has one place
   */
  private record Bounds(Set<String> above, Optional<StageKind> last, Optional<StageKind> next) {}

  List<Ranked> ranked() {
    Set<String> above = new LinkedHashSet<>(around.above());
    Bounds bounds =
        new Bounds(
            above,
            kinds(above).max(Comparator.comparingInt(StageKind::order)),
            kinds(new LinkedHashSet<>(around.below()))
                .filter(one -> !isMovable(one))
                .min(Comparator.comparingInt(StageKind::order)));
    return catalogue.stages().stream()
        .filter(kind -> kind.family() != Family.STRUCTURE)
        .map(kind -> rank(kind, bounds))
        .sorted(Comparator.comparing(Ranked::fit).thenComparingInt(Ranked::number))
        .toList();
  }

  private static Ranked rank(StageKind kind, Bounds bounds) {
    String last = bounds.last().map(StageKind::word).orElse("");
    int reached = bounds.last().map(StageKind::order).orElse(0);
    boolean isTwice = bounds.above().contains(kind.word());
    boolean isEarlier = kind.order() < reached;
    if (isEarlier && isMovable(kind) && reached < FINISHING) {
      return isTwice && kind.family() == Family.FILTER
          ? twice(kind)
          : new Ranked(kind, Fit.HERE, reached + NEIGHBOURS, "usual before and after the " + last);
    }
    if (isEarlier) {
      return new Ranked(kind, Fit.EARLIER, kind.order(), "usually before the " + last + " above");
    }
    Optional<StageKind> next = bounds.next().filter(one -> one.order() < kind.order());
    if (next.isPresent() && !isMovable(kind)) {
      String reason = "usually after the " + next.get().word() + " below";
      return new Ranked(kind, Fit.LATER, kind.order(), reason);
    }
    return isTwice && kind.family() != Family.EQUALISER
        ? twice(kind)
        : new Ranked(kind, Fit.HERE, kind.order(), "its usual place");
  }

  private static Ranked twice(StageKind kind) {
    return new Ranked(kind, Fit.TWICE, kind.order(), "one stands above already");
  }

  private static boolean isMovable(StageKind kind) {
    return kind.family() == Family.FILTER || kind.family() == Family.EQUALISER;
  }

  private Stream<StageKind> kinds(Set<String> words) {
    return words.stream().flatMap(word -> catalogue.stage(word).stream());
  }
}
