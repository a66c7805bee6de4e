package chainwright.engine.stage;

import chainwright.dsp.signal.ProcessorDesign;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Finds the model of a stage kind by its name: {@code high-pass} is designed by the class {@code
 * HighPass} of this package, so that a new kind needs no list to be changed.
 */
public final class StageModels {

  private static final ConcurrentHashMap<String, Optional<StageModel>> KNOWN =
      new ConcurrentHashMap<>();

  private StageModels() {}

  /**
   * Finds a model.
   *
   * @param word the stage's word, such as "high-pass"
   * @return its model, or empty if there is none
   */
  public static Optional<StageModel> find(String word) {
    return KNOWN.computeIfAbsent(word, StageModels::load);
  }

  /**
   * Designs a stage.
   *
   * @param context its settings and where it stands
   * @return what it does; empty if it is not finished or its settings allow no design, which other
   *     findings report
   */
  public static Optional<StageSound> design(StageContext context) {
    if (!context.settings().areFinished()) {
      return Optional.empty();
    }
    return find(context.settings().kind().word())
        .flatMap(
            model -> {
              try {
                return Optional.of(model.design(context));
              } catch (IllegalArgumentException impossible) {
                return Optional.empty();
              }
            });
  }

  /**
   * Designs what processes the audio of a stage.
   *
   * @param audio its settings, where it stands and what its detector hears
   * @return the processor's design; empty if it is not finished, its kind is not processed yet or
   *     its settings allow no design
   */
  public static Optional<ProcessorDesign> processor(StageAudio audio) {
    if (!audio.context().settings().areFinished()) {
      return Optional.empty();
    }
    return find(audio.context().settings().kind().word())
        .flatMap(
            model -> {
              try {
                return model.processor(audio);
              } catch (IllegalArgumentException impossible) {
                return Optional.empty();
              }
            });
  }

  private static Optional<StageModel> load(String word) {
    String name = StageModels.class.getPackageName() + "." + className(word);
    try {
      return Optional.of(
          Class.forName(name).asSubclass(StageModel.class).getDeclaredConstructor().newInstance());
    } catch (ClassNotFoundException unknown) {
      return Optional.empty();
    } catch (ReflectiveOperationException broken) {
      throw new IllegalStateException("`" + name + "` cannot be made", broken);
    }
  }

  /**
   * Returns the name of the class that models a stage kind.
   *
   * @param word such as "high-pass"
   * @return such as "HighPass"
   */
  public static String className(String word) {
    StringBuilder name = new StringBuilder();
    for (String part : word.split("-", -1)) {
      name.append(part.substring(0, 1).toUpperCase(Locale.ROOT)).append(part.substring(1));
    }
    return name.toString();
  }
}
