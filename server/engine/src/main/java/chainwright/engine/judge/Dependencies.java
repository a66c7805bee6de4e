package chainwright.engine.judge;

import chainwright.notation.model.Branch;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Step;
import chainwright.notation.model.Value;
import chainwright.notation.project.Scope;
import chainwright.notation.syntax.Section;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * The sections that the findings of a chain depend on, and the routing of the whole session.
 *
 * @param sections the sections, compared by identity
 * @param routing which track goes and sends where, by name; compared by identity too
 */
record Dependencies(List<Section> sections, List<String> routing) {

  /** Whether nothing has changed that could change a finding. */
  boolean isSame(Dependencies other) {
    if (sections.size() != other.sections.size()) {
      return false;
    }
    for (int i = 0; i < sections.size(); i++) {
      if (sections.get(i) != other.sections.get(i)) {
        return false;
      }
    }
    return routing == other.routing;
  }

  /** Finds what a track depends on. */
  static Dependencies of(Definition.Track track, Scope scope, List<String> routing) {
    Set<Section> sections = new LinkedHashSet<>();
    scope.session().ifPresent(session -> sections.add(session.section()));
    Walk walk = new Walk(scope, sections, new LinkedHashSet<>());
    walk.track(track);
    return new Dependencies(List.copyOf(sections), routing);
  }

  /** Spells the routing of all tracks. */
  static List<String> routing(Scope scope) {
    List<String> routing = new ArrayList<>();
    for (Definition.Track track : scope.tracks()) {
      StringBuilder line = new StringBuilder(track.name().text()).append(track.isBus() ? '*' : ' ');
      for (Declarations.Route route : track.declarations().routes()) {
        line.append('>').append(route.bus().text()).append(route.fader().decibels());
      }
      for (Declarations.Send send : track.declarations().sends()) {
        line.append('~').append(send.bus().text()).append(send.isPreFader());
      }
      routing.add(line.toString());
    }
    return routing;
  }

  private record Walk(Scope scope, Set<Section> sections, Set<String> seen) {

    void track(Definition.Track track) {
      if (!seen.add("track " + track.name().text())) {
        return;
      }
      sections.add(track.section());
      track.declarations().routes().forEach(route -> named(route.bus().text()));
      track.declarations().sends().forEach(send -> named(send.bus().text()));
      track.declarations().spills().forEach(spill -> named(spill.what().text()));
      steps(track.steps());
    }

    private void named(String name) {
      scope.track(name).ifPresent(this::track);
    }

    private void steps(List<Step> steps) {
      for (Step step : steps) {
        if (step instanceof Step.Apply apply && seen.add("preset " + apply.preset().text())) {
          scope
              .preset(apply.preset().text())
              .ifPresent(
                  preset -> {
                    sections.add(preset.section());
                    steps(preset.steps());
                  });
        }
        if (step instanceof Step.Stage stage) {
          stage
              .settings()
              .value("key")
              .ifPresent(
                  value -> {
                    if (value instanceof Value.Reference reference) {
                      named(reference.name());
                    }
                  });
        }
        for (Branch branch : step.branches()) {
          steps(branch.steps());
        }
      }
    }
  }
}
