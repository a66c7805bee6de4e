package chainwright.engine.path;

import chainwright.dsp.filter.ConstantFactor;
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseProduct;
import chainwright.dsp.signal.RateFilter;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.StageSound;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Step;
import chainwright.quantity.Level;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What happens to the signal in one chain or bus, in order. Immutable. */
public final class SignalPath {

  private static final Response UNITY = new ConstantFactor(1);

  private final Definition.Track track;
  private final List<PathElement> elements;
  private final Optional<SourceKind> source;
  private final OptionalDouble lowestHz;
  private final boolean isLowestDeclared;
  private final SampleRate rate;
  private final Optional<Level> alignment;
  private final List<StageElement> stages;
  private final List<StageElement> placed;

  /**
   * Makes a path.
   *
   * @param track the chain or bus
   * @param elements what happens, presets put in their places
   * @param source the kind of source, if declared
   * @param lowestHz the lowest fundamental [Hz], declared or usual for the source; empty if unknown
   * @param isLowestDeclared whether the lowest fundamental is declared rather than usual
   * @param rate the sample rate of what comes to it
   * @param alignment which digital level [dBFS] stands for 0 dBu, if the session says so
   */
  public SignalPath(
      Definition.Track track,
      List<PathElement> elements,
      Optional<SourceKind> source,
      OptionalDouble lowestHz,
      boolean isLowestDeclared,
      SampleRate rate,
      Optional<Level> alignment) {
    this.track = track;
    this.elements = List.copyOf(elements);
    this.source = source;
    this.lowestHz = lowestHz;
    this.isLowestDeclared = isLowestDeclared;
    this.rate = rate;
    this.alignment = alignment;
    // Nearly every rule asks for them.
    List<StageElement> found = new ArrayList<>();
    collect(elements, found);
    this.placed = List.copyOf(found);
    found.removeIf(stage -> !stage.isFinished());
    this.stages = found.size() == placed.size() ? placed : List.copyOf(found);
  }

  /**
   * Returns whose path it is.
   *
   * @return the chain or bus
   */
  public Definition.Track track() {
    return track;
  }

  /**
   * Returns what happens.
   *
   * @return the elements in order, presets put in their places
   */
  public List<PathElement> elements() {
    return elements;
  }

  /**
   * Returns the kind of source.
   *
   * @return the kind, if declared
   */
  public Optional<SourceKind> source() {
    return source;
  }

  /**
   * Returns the lowest fundamental.
   *
   * @return it [Hz], declared or usual for the source; empty if unknown
   */
  public OptionalDouble lowestHz() {
    return lowestHz;
  }

  /**
   * Asks where the lowest fundamental comes from.
   *
   * @return whether it is declared rather than usual
   */
  public boolean isLowestDeclared() {
    return isLowestDeclared;
  }

  /**
   * Returns the sample rate.
   *
   * @return the rate of what comes to the path, at which it runs until a conversion
   */
  public SampleRate rate() {
    return rate;
  }

  /**
   * Returns the sample rate of what the path puts out.
   *
   * @return that of its last conversion; else that of what comes to it
   */
  public SampleRate deliveredRate() {
    return rateBehind(elements, rate);
  }

  /**
   * Returns the sample rate behind some elements.
   *
   * @param elements the elements of a path in order; conversions inside structures count nothing
   * @param before the rate of what comes to the first
   * @return the rate of what the last puts out
   */
  static SampleRate rateBehind(List<PathElement> elements, SampleRate before) {
    SampleRate behind = before;
    for (PathElement element : elements) {
      if (element instanceof StageElement stage) {
        behind = stage.rateChange().map(RateFilter::to).orElse(behind);
      }
    }
    return behind;
  }

  /**
   * Returns which digital level stands for 0 dBu.
   *
   * @return the level [dBFS], if the session says so
   */
  public Optional<Level> alignment() {
    return alignment;
  }

  /**
   * Returns the same path with other elements.
   *
   * @param others what happens
   * @return the copy
   */
  SignalPath withElements(List<PathElement> others) {
    return new SignalPath(track, others, source, lowestHz, isLowestDeclared, rate, alignment);
  }

  /**
   * Returns the stages that are not bypassed, in order, those inside structures included. A stage
   * that lacks a setting it needs is still being written; no value of it is settled yet.
   *
   * @return the stages; {@link StageElement#isPartial} tells which see only a part of the signal
   */
  public List<StageElement> stages() {
    return stages;
  }

  /**
   * Returns the stages that are not bypassed, in order, those still being written included: their
   * words are known, and so is what stands before what.
   *
   * @return the stages; those that are not finished have no sound
   */
  public List<StageElement> placed() {
    return placed;
  }

  /**
   * Returns the stages and structures that are not bypassed and of which nothing can be computed,
   * since something on their lines is wrong or still missing.
   *
   * @return them in order; the responses are without them
   */
  public List<PathElement> uncomputed() {
    List<PathElement> found = new ArrayList<>();
    collectUncomputed(elements, found);
    return found;
  }

  private static void collectUncomputed(List<PathElement> elements, List<PathElement> into) {
    for (PathElement element : elements) {
      if (element instanceof StageElement stage) {
        if (!stage.isBypassed() && stage.sound().isEmpty()) {
          into.add(stage);
        }
      } else if (element instanceof SplitElement split && !split.isBypassed()) {
        if (!split.unread().isEmpty()) {
          into.add(split);
        }
        split.branches().forEach(branch -> collectUncomputed(branch.elements(), into));
      }
    }
  }

  private static void collect(List<PathElement> elements, List<StageElement> into) {
    for (PathElement element : elements) {
      if (element.isBypassed()) {
        continue;
      }
      if (element instanceof StageElement stage) {
        into.add(stage);
      } else if (element instanceof SplitElement split) {
        for (PathElement.PathBranch branch : split.branches()) {
          collect(branch.elements(), into);
        }
      }
    }
  }

  /**
   * Returns what the whole chain does to each frequency, dynamics at rest and passages left out.
   *
   * @return the response
   */
  public Response response() {
    return product(elements);
  }

  /**
   * Returns what the chain does up to and with a step of its main line.
   *
   * @param step the step; for one inside a structure, everything up to the structure
   * @return the response
   */
  public Response responseUpTo(Step step) {
    List<PathElement> before = new ArrayList<>();
    for (PathElement element : elements) {
      before.add(element);
      boolean isIt =
          element instanceof StageElement stage
              ? stage.stage() == step
              : element instanceof SplitElement split && holds(split, step);
      if (isIt) {
        break;
      }
    }
    return product(before);
  }

  private static boolean holds(SplitElement split, Step step) {
    if (split.step() == step) {
      return true;
    }
    for (PathElement.PathBranch branch : split.branches()) {
      for (PathElement element : branch.elements()) {
        boolean isIt =
            element instanceof StageElement stage
                ? stage.stage() == step
                : element instanceof SplitElement inner && holds(inner, step);
        if (isIt) {
          return true;
        }
      }
    }
    return false;
  }

  /**
   * Returns the product of what elements do, those bypassed left out.
   *
   * @param elements the elements
   * @return the response
   */
  public static Response product(List<PathElement> elements) {
    List<Response> parts = new ArrayList<>();
    for (PathElement element : elements) {
      if (!element.isBypassed()) {
        parts.add(response(element));
      }
    }
    return parts.isEmpty() ? UNITY : new ResponseProduct(parts);
  }

  private static Response response(PathElement element) {
    if (element instanceof StageElement stage) {
      return stage.sound().map(StageSound::response).orElse(UNITY);
    }
    return ((SplitElement) element).response();
  }
}
