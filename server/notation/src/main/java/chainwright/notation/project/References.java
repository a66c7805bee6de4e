package chainwright.notation.project;

import chainwright.notation.model.Branch;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Name;
import chainwright.notation.model.Step;
import chainwright.notation.model.Value;
import chainwright.notation.model.Written;
import java.util.ArrayList;
import java.util.List;

/** Finds where a definition uses names that are defined elsewhere. */
public final class References {

  /** What a name that is used stands for. */
  public enum Kind {
    /** A preset, after {@code apply}. */
    PRESET,
    /** A bus, after {@code to} or {@code send}. */
    BUS,
    /** A chain or a bus, after {@code key} or {@code with}. */
    TRACK,
    /** A chain or a kind of source, after {@code spill}. */
    SPILL
  }

  /**
   * A use of a name.
   *
   * @param kind what it stands for
   * @param name the name, in the definition's section
   */
  public record Use(Kind kind, Name name) {}

  private References() {}

  /**
   * Returns the names that a definition uses.
   *
   * @param definition the definition
   * @return the uses, declarations first, then the steps in order
   */
  public static List<Use> of(Definition definition) {
    List<Use> uses = new ArrayList<>();
    if (definition instanceof Definition.Track track) {
      Declarations declared = track.declarations();
      declared.routes().forEach(route -> uses.add(new Use(Kind.BUS, route.bus())));
      declared.sends().forEach(send -> uses.add(new Use(Kind.BUS, send.bus())));
      declared.spills().forEach(spill -> uses.add(new Use(Kind.SPILL, spill.what())));
      steps(track.steps(), uses);
    } else if (definition instanceof Definition.Preset preset) {
      steps(preset.steps(), uses);
    }
    return uses;
  }

  private static void steps(List<Step> steps, List<Use> uses) {
    for (Step step : steps) {
      if (step instanceof Step.Apply apply) {
        uses.add(new Use(Kind.PRESET, apply.preset()));
      } else if (step instanceof Step.Stage stage) {
        for (Written written : stage.settings().written()) {
          if (written.value() instanceof Value.Reference reference) {
            uses.add(new Use(Kind.TRACK, new Name(reference.name(), written.valueSpan())));
          }
        }
        steps(stage.sideChain(), uses);
      }
      for (Branch branch : step.branches()) {
        steps(branch.steps(), uses);
      }
    }
  }
}
