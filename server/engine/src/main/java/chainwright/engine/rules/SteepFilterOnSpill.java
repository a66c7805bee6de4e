package chainwright.engine.rules;

import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Name;
import chainwright.quantity.Decibels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * A steep high-pass turns the phase of a sound that other microphones hear too.
 *
 * <p>Why: the same sound is then added out of step.
 *
 * <p>At fault: {@code spill acoustic-guitar} with {@code high-pass 66 Hz 36 dB/oct}. Not at fault:
 * the same at 18 dB/oct; spill 20 dB lower or more; a group whose other members have the same
 * filter. From 24 dB/oct on the filter is at fault where an octave above its cutoff reaches the
 * lowest note of the shared sound; at 18 dB/oct only where its cutoff lies an octave inside. Both
 * limits stand for the coherence that only recordings show, and are common practice, no source. Two
 * filters in a row whose cutoffs lie within an octave are one steeper filter at the higher cutoff.
 */
public final class SteepFilterOnSpill implements Rule {

  private static final double STEEP_DB_PER_OCTAVE = 18;
  private static final double VERY_STEEP_DB_PER_OCTAVE = 24;
  private static final double UNIMPORTANT_DB = -20;
  private static final double OCTAVE = 2;
  private static final double BAND_BEGINS = 0.7;
  private static final double FAR_ABOVE = 50;
  private static final double HIGHEST_HZ = 10_000;

  private static final RuleCard CARD =
      new RuleCard(
          "steep-filter-on-spill",
          Severity.WARNING,
          "A steep filter on a sound that others hear too",
          "A steep filter turns the phase around its corner, and the same sound in the other"
              + " microphones is then added out of step. Around the corner the sum gets thin"
              + " although each track alone sounds clean.",
          List.of("SENQ", "CALC"));

  /** A sound that reaches several microphones. */
  private record Shared(String inWords, double lowestHz) {}

  /** Makes the rule, which has no state. */
  public SteepFilterOnSpill() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    List<StageElement> filters = HighPasses.of(evidence.path());
    boolean isFound = false;
    for (StageElement filter : filters) {
      for (Shared shared : shared(evidence, filter)) {
        if (isAtFault(List.of(filter), shared)) {
          report.accept(finding(evidence, filter, shared));
          isFound = true;
          break;
        }
      }
    }
    if (!isFound && filters.size() > 1) {
      checkTogether(evidence, filters, report);
    }
  }

  /** Filters that are gentle enough each by itself may be one steep filter in a row. */
  private static void checkTogether(
      Evidence evidence, List<StageElement> filters, Consumer<Finding> report) {
    List<StageElement> stack = HighPasses.atHighestCutoff(filters);
    for (StageElement filter : stack) {
      for (Shared shared : shared(evidence, filter)) {
        if (isAtFault(stack, shared)) {
          report.accept(finding(evidence, stack, shared));
          return;
        }
      }
    }
  }

  private static boolean isAtFault(List<StageElement> filters, Shared shared) {
    return isAtFault(
        HighPasses.slopeDbPerOctave(filters),
        HighPasses.highestCutoffHz(filters),
        shared.lowestHz());
  }

  private static boolean isAtFault(double slopeDbPerOctave, double cutoffHz, double lowestHz) {
    return slopeDbPerOctave >= VERY_STEEP_DB_PER_OCTAVE
        ? cutoffHz * OCTAVE >= lowestHz
        : slopeDbPerOctave >= STEEP_DB_PER_OCTAVE && cutoffHz >= lowestHz * OCTAVE;
  }

  private static List<Shared> shared(Evidence evidence, StageElement filter) {
    List<Shared> shared = new ArrayList<>();
    for (Declarations.Spill spill : evidence.track().declarations().spills()) {
      double levelDb = spill.level().map(Decibels::decibels).orElse(0.0);
      if (levelDb > UNIMPORTANT_DB) {
        spill(evidence, spill.what().text()).ifPresent(shared::add);
      }
    }
    if (hasUnlikePartner(evidence, filter)) {
      evidence
          .path()
          .lowestHz()
          .ifPresent(hertz -> shared.add(new Shared("the sound of its group", hertz)));
    }
    return shared;
  }

  private static Optional<Shared> spill(Evidence evidence, String what) {
    Optional<SourceKind> kind = evidence.catalogue().source(what);
    if (kind.isPresent()) {
      return kind.get().lowestHz().isPresent()
          ? Optional.of(new Shared("the spill of " + what, kind.get().lowestHz().getAsDouble()))
          : Optional.empty();
    }
    return evidence
        .scope()
        .track(what)
        .map(track -> new PathBuilder(evidence.scope()).build(track))
        .filter(path -> path.lowestHz().isPresent())
        .map(path -> new Shared("the spill of " + what, path.lowestHz().getAsDouble()));
  }

  private static boolean hasUnlikePartner(Evidence evidence, StageElement filter) {
    Optional<String> group = group(evidence.track());
    return group.isPresent()
        && evidence.scope().tracks().stream()
            .filter(track -> !track.equals(evidence.track()) && group(track).equals(group))
            .map(track -> new PathBuilder(evidence.scope()).build(track))
            .anyMatch(path -> !hasSame(path, filter));
  }

  private static Optional<String> group(Definition.Track track) {
    return track.declarations().group().map(Name::text);
  }

  private static boolean hasSame(SignalPath path, StageElement filter) {
    return HighPasses.of(path).stream()
        .anyMatch(
            other ->
                HighPasses.cutoffHz(other) == HighPasses.cutoffHz(filter)
                    && HighPasses.slopeDbPerOctave(other) == HighPasses.slopeDbPerOctave(filter));
  }

  private static Finding finding(Evidence evidence, StageElement filter, Shared shared) {
    String gentler =
        isAtFault(STEEP_DB_PER_OCTAVE, HighPasses.cutoffHz(filter), shared.lowestHz())
            ? "12 dB/oct"
            : "18 dB/oct";
    return evidence.finding(
        CARD,
        StageOrder.at(filter, "slope"),
        written(filter) + " turns " + turn(List.of(filter), shared),
        "Write " + gentler + ", lower the corner, or filter the whole group alike.",
        List.of(),
        StageOrder.write(evidence, filter, "slope", gentler, true));
  }

  private static Finding finding(Evidence evidence, List<StageElement> stack, Shared shared) {
    StageElement last = stack.get(stack.size() - 1);
    List<StageElement> others = HighPasses.without(stack, last);
    return evidence.finding(
        CARD,
        StageOrder.at(last, "slope"),
        stack.stream().map(SteepFilterOnSpill::written).collect(Collectors.joining(" and "))
            + ", together "
            + Math.round(HighPasses.slopeDbPerOctave(stack))
            + " dB/oct, turn "
            + turn(stack, shared),
        "Delete one, lower both corners, or filter the whole group alike.",
        others.stream()
            .map(one -> StageOrder.related(one, "the same signal passes this one too"))
            .toList(),
        isAtFault(others, shared)
            ? List.of()
            : StageOrder.remove(evidence, "Remove this `high-pass`", last));
  }

  private static String written(StageElement filter) {
    return filter.context().slope() + " at " + filter.context().frequency("cutoff");
  }

  /** Says how far filters turn a shared sound where they turn it most and it is heard. */
  private static String turn(List<StageElement> filters, Shared shared) {
    double cutoffHz = HighPasses.highestCutoffHz(filters);
    double atHz = Math.min(Math.max(shared.lowestHz(), BAND_BEGINS * cutoffHz), OCTAVE * cutoffHz);
    return shared.inWords()
        + " by "
        + Math.round(turnDegrees(filters, atHz, cutoffHz))
        + " degrees at "
        + Figures.hertz(atHz)
        + "; how loud it is in both microphones, only a recording tells";
  }

  /** How far filters turn the phase, against far above their cutoffs where they turn nothing. */
  private static double turnDegrees(List<StageElement> filters, double atHz, double cutoffHz) {
    double farHz = Math.max(atHz, Math.min(FAR_ABOVE * cutoffHz, HIGHEST_HZ));
    double[] phases = HighPasses.response(filters).toPhase(new double[] {atHz, farHz});
    return Math.toDegrees(Math.abs(phases[0] - phases[1]));
  }
}
