package chainwright.engine.rules;

import chainwright.dsp.filter.Estimate;
import chainwright.dsp.filter.FrequencyGrid;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.stage.StageSound;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What the equaliser stages of a path raise and lower. */
public final class EqualiserMoves {

  /** How much two moves of opposite sign may share before they cancel, of the smaller one. */
  private static final double OVERLAP_SHARE = 0.6;

  /** Moves further apart than this tilt a region, which is a purpose of its own. */
  private static final double NEAR_OCTAVES = 0.5;

  private static final Set<String> WITH_GAIN = Set.of("bell", "low-shelf", "high-shelf");
  private static final double[] GRID = FrequencyGrid.logarithmic(20, 20_000, 241).toHertz();

  private EqualiserMoves() {}

  /**
   * Asks whether a stage raises or lowers a region by a gain.
   *
   * @param element the stage
   * @return whether it is a bell or a shelf
   */
  public static boolean isMove(StageElement element) {
    return WITH_GAIN.contains(element.word()) && centreHz(element) > 0;
  }

  /**
   * Returns the bells and shelves that the whole signal passes.
   *
   * @param path the path
   * @return the stages, in order, those bypassed left out
   */
  public static List<StageElement> of(SignalPath path) {
    List<StageElement> moves = new ArrayList<>();
    for (PathElement element : path.elements()) {
      if (element instanceof StageElement stage && !stage.isBypassed() && isMove(stage)) {
        moves.add(stage);
      }
    }
    return moves;
  }

  /**
   * Returns the bells and shelves that the whole signal passes, in groups between which something
   * stands that is not linear, that divides the signal, or of which nothing can be computed. In a
   * group, and only there, two moves are one move.
   *
   * @param path the path
   * @return the groups, in order, each in order
   */
  static List<List<StageElement>> runs(SignalPath path) {
    List<List<StageElement>> runs = new ArrayList<>();
    List<StageElement> run = new ArrayList<>();
    for (PathElement element : path.elements()) {
      if (element.isBypassed()) {
        continue;
      }
      if (element instanceof StageElement stage && isLinear(stage)) {
        if (isMove(stage)) {
          run.add(stage);
        }
      } else if (!run.isEmpty()) {
        runs.add(run);
        run = new ArrayList<>();
      }
    }
    runs.add(run);
    return runs;
  }

  private static boolean isLinear(StageElement stage) {
    return switch (stage.stage().kind().family()) {
      case DYNAMICS, SATURATION, REPAIR -> false;
      default ->
          stage.sound().isPresent()
              && stage.sound().flatMap(StageSound::curve).isEmpty()
              && stage.sound().flatMap(StageSound::harmonics).isEmpty();
    };
  }

  /**
   * Returns where a stage works.
   *
   * @param element a bell or shelf
   * @return its centre or cutoff [Hz]; 0 if none is written
   */
  public static double centreHz(StageElement element) {
    String name = element.word().equals("bell") ? "centre" : "cutoff";
    return element.stage().settings().number(name).orElse(0.0);
  }

  /**
   * Returns the frequency at which a stage does most of what it does.
   *
   * @param element a bell or shelf
   * @return the centre of a bell, the middle of the shelf an octave beyond its cutoff [Hz]
   */
  public static double strongestHz(StageElement element) {
    return switch (element.word()) {
      case "low-shelf" -> centreHz(element) / 2;
      case "high-shelf" ->
          Math.min(2 * centreHz(element), (centreHz(element) + GRID[GRID.length - 1]) / 2);
      default -> centreHz(element);
    };
  }

  /**
   * Returns the gain of a stage.
   *
   * @param element the stage
   * @return its gain [dB]; 0 if none is written
   */
  public static double gainDb(StageElement element) {
    return element.stage().settings().number("gain").orElse(0.0);
  }

  /**
   * Returns what a stage does to one frequency.
   *
   * @param element the stage
   * @param hertz the frequency [Hz]
   * @return the change of level [dB]; 0 if it cannot be designed
   */
  public static double decibelsAt(StageElement element, double hertz) {
    return response(element).map(response -> response.decibelsAt(hertz)).orElse(0.0);
  }

  /**
   * Returns about what a stage does to one frequency, without designing its filter.
   *
   * @param element the stage
   * @param hertz the frequency [Hz]
   * @return the change of level; 0 if it cannot be designed
   */
  static Estimate estimateAt(StageElement element, double hertz) {
    return response(element).map(response -> response.estimateAt(hertz)).orElse(new Estimate(0, 0));
  }

  /**
   * Returns what a stage does to each frequency.
   *
   * @param element the stage
   * @return the response; empty if it cannot be designed
   */
  public static Optional<Response> response(StageElement element) {
    return element.sound().map(StageSound::response);
  }

  /**
   * Asks whether two stages of one kind undo each other.
   *
   * @param first one
   * @param second the other
   * @return whether one raises most of what the other lowers
   */
  public static boolean cancel(StageElement first, StageElement second) {
    double octaves = Math.abs(Math.log(centreHz(first) / centreHz(second)) / Math.log(2));
    boolean isOpposite =
        gainDb(first) * gainDb(second) < 0
            && first.word().equals(second.word())
            && octaves <= NEAR_OCTAVES;
    Optional<Response> one = response(first);
    Optional<Response> other = response(second);
    if (!isOpposite || one.isEmpty() || other.isEmpty()) {
      return false;
    }
    double[] a = one.get().toDecibels(GRID);
    double[] b = other.get().toDecibels(GRID);
    double shared = 0;
    double areaA = 0;
    double areaB = 0;
    for (int i = 0; i < GRID.length; i++) {
      areaA += Math.abs(a[i]);
      areaB += Math.abs(b[i]);
      shared += a[i] * b[i] < 0 ? Math.min(Math.abs(a[i]), Math.abs(b[i])) : 0;
    }
    double smaller = Math.min(areaA, areaB);
    return smaller > 0 && shared >= OVERLAP_SHARE * smaller;
  }

  /**
   * Returns how much of what a stage does lies above a frequency.
   *
   * @param element the stage
   * @param hertz the frequency [Hz]
   * @return the share of its area over octaves up to 20 kHz, from 0 to 1
   */
  public static double shareAbove(StageElement element, double hertz) {
    Optional<Response> response = response(element);
    if (response.isEmpty()) {
      return 0;
    }
    double[] decibels = response.get().toDecibels(GRID);
    double above = 0;
    double whole = 0;
    for (int i = 0; i < GRID.length; i++) {
      whole += Math.abs(decibels[i]);
      above += GRID[i] > hertz ? Math.abs(decibels[i]) : 0;
    }
    return whole > 0 ? above / whole : 0;
  }
}
