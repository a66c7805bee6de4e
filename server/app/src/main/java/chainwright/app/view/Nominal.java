package chainwright.app.view;

import chainwright.notation.project.Scope;
import chainwright.quantity.Level;

/**
 * The level at which dynamics and saturation are read.
 *
 * @param levelDbfs the digital level of a signal at alignment [dBFS]
 * @param isDeclared whether the session declares it
 */
public record Nominal(double levelDbfs, boolean isDeclared) {

  /** The level that is taken where no session declares one. Source: EBU R 68-2000 (second-hand). */
  public static final Nominal USUAL = new Nominal(-18, false);

  /**
   * Returns the level that holds in a file.
   *
   * @param scope what the names of the file mean
   * @return the digital level of 0 dBu that the session declares, else −18 dBFS
   */
  public static Nominal of(Scope scope) {
    return scope
        .alignment()
        .map(Level::decibels)
        .map(level -> new Nominal(level, true))
        .orElse(USUAL);
  }

  /**
   * Says which level it is and where it comes from.
   *
   * @return one sentence
   */
  public String inWords() {
    return isDeclared
        ? "Read at " + level() + ", the session's alignment for 0 dBu."
        : "Read at "
            + level()
            + ", the alignment level of EBU R 68: no session here declares an `alignment`.";
  }

  /**
   * Spells the level.
   *
   * @return such as "−18 dBFS"
   */
  public String level() {
    return Readings.level(levelDbfs);
  }
}
