package chainwright.app.cli;

import chainwright.engine.sound.MeasuredLevel;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Declarations.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The levels that a chain or bus declares for its end, and what a file is against them.
 *
 * @param loudness the integrated loudness that is aimed at
 * @param maxTruePeak the highest true peak
 */
record DeclaredLevels(Optional<Target> loudness, Optional<Target> maxTruePeak) {

  /** How far the loudness may lie from the declared one [LU]. Common practice, no source. */
  private static final double LOUDNESS_TOLERANCE_LU = 0.5;

  /** What counts as an excess [dB]: all that shows in two decimals. */
  private static final double LEAST_EXCESS_DB = 0.005;

  static DeclaredLevels of(Declarations declared) {
    return new DeclaredLevels(declared.loudness(), declared.maxTruePeak());
  }

  OptionalDouble lufs() {
    return level(loudness);
  }

  OptionalDouble dbtp() {
    return level(maxTruePeak);
  }

  /**
   * Returns what a render must keep to: a part has a loudness of its own, and so has what is
   * matched to its take; what leaves stages out is not what is delivered.
   *
   * @param hasAllStages whether no stage is left out
   * @param isWhole whether the whole is rendered, at a level of its own
   */
  DeclaredLevels expected(boolean hasAllStages, boolean isWhole) {
    return new DeclaredLevels(
        loudness.filter(any -> hasAllStages && isWhole), maxTruePeak.filter(any -> hasAllStages));
  }

  /**
   * Says where a file is not as declared.
   *
   * @param file its level
   * @return a sentence for each level that is missed
   */
  List<String> missed(MeasuredLevel file) {
    List<String> missed = new ArrayList<>();
    loudness.ifPresent(
        target -> {
          double aboveLu = file.integratedLufs() - target.level().baseValue();
          String declared = "the declared `loudness " + target.level() + "`";
          if (!Double.isFinite(aboveLu)) {
            missed.add(
                "the file is "
                    + (Double.isNaN(aboveLu) ? "too short" : "too quiet")
                    + " to have a loudness, and cannot be held against "
                    + declared);
          } else if (Math.abs(aboveLu) > LOUDNESS_TOLERANCE_LU) {
            missed.add(
                String.format(
                    Locale.ROOT,
                    "the file is %.1f LU %s than %s",
                    Math.abs(aboveLu),
                    aboveLu > 0 ? "louder" : "softer",
                    declared));
          }
        });
    maxTruePeak.ifPresent(
        target -> {
          double overDb = file.truePeakDbtp() - target.level().baseValue();
          if (overDb >= LEAST_EXCESS_DB) {
            missed.add(
                String.format(
                    Locale.ROOT,
                    "the true peak lies %.2f dB over the declared `max-true-peak %s`",
                    overDb,
                    target.level()));
          }
        });
    return missed;
  }

  private static OptionalDouble level(Optional<Target> target) {
    return target
        .map(declared -> OptionalDouble.of(declared.level().baseValue()))
        .orElse(OptionalDouble.empty());
  }
}
