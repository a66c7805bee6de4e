package chainwright.notation.project;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.fault.Fault;
import chainwright.notation.lowering.Nearest;
import chainwright.notation.lowering.SourceWords;
import chainwright.notation.model.Branch;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Name;
import chainwright.notation.model.Step;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Finds names that mean nothing, or two things, and definitions that go round in a circle. */
public final class NameChecks {

  private final Project project;
  private final SourceFile file;
  private final Scope scope;
  private final Catalogue catalogue;
  private final List<Finding> findings = new ArrayList<>();

  private NameChecks(Project project, SourceFile file, Catalogue catalogue) {
    this.project = project;
    this.file = file;
    this.scope = project.scope(file.key());
    this.catalogue = catalogue;
  }

  /**
   * Checks the names in a file.
   *
   * @param project the files that are known
   * @param key the file's key
   * @param catalogue knows the kinds of source
   * @return the findings, all of them in that file; empty for a file that is not known
   */
  public static List<Finding> check(Project project, String key, Catalogue catalogue) {
    Optional<SourceFile> file = project.file(key);
    if (file.isEmpty()) {
      return List.of();
    }
    NameChecks checks = new NameChecks(project, file.get(), catalogue);
    checks.checkDefinitions();
    for (Definition definition : file.get().definitions()) {
      checks.checkUses(definition);
      checks.checkImport(definition);
      checks.checkLabels(definition);
      checks.checkCircle(definition);
    }
    return checks.findings;
  }

  private void checkDefinitions() {
    Map<String, Definition> first = new HashMap<>();
    Optional<Definition> session = Optional.empty();
    for (Definition definition : file.definitions()) {
      Optional<Name> name = name(definition);
      if (name.isPresent()) {
        String space = definition instanceof Definition.Preset ? "preset " : "track ";
        Definition before = first.putIfAbsent(space + name.get().text(), definition);
        if (before != null) {
          report(
              Fault.NAME_DEFINED_TWICE,
              definition.section(),
              name.get(),
              "`" + name.get().text() + "` is defined twice",
              "The first definition holds; this one is never used.",
              "Give it another name.",
              List.of(related(before, name(before).orElse(name.get()), "defined here first")),
              List.of());
        }
      } else if (definition instanceof Definition.Session) {
        if (session.isPresent()) {
          report(
              Fault.DECLARED_TWICE,
              definition.section(),
              new Name("session", definition.lineSpan()),
              "a file has one session",
              "The first one holds.",
              "Put its lines into the first session.",
              List.of(
                  related(
                      session.get(),
                      new Name("session", session.get().lineSpan()),
                      "the session that holds")),
              List.of());
        } else {
          session = Optional.of(definition);
        }
      }
    }
  }

  private void checkUses(Definition definition) {
    for (References.Use use : References.of(definition)) {
      String name = use.name().text();
      switch (use.kind()) {
        case PRESET -> {
          if (scope.preset(name).isEmpty()) {
            unknown(definition, use.name(), Fault.UNKNOWN_PRESET, "preset", presetNames());
          }
        }
        case BUS -> checkBus(definition, use.name());
        case TRACK -> {
          if (scope.track(name).isEmpty()) {
            unknown(definition, use.name(), Fault.UNKNOWN_CHAIN, "chain or bus", trackNames(false));
          } else if (isItself(definition, name)) {
            report(
                Fault.KEY_IS_ITSELF,
                definition.section(),
                use.name(),
                "`" + name + "` is this one itself",
                "Without a name a stage listens to its own signal already.",
                "Remove it, or name the other chain that is meant.",
                List.of(),
                List.of());
          }
        }
        case SPILL -> {
          if (scope.track(name).isEmpty() && catalogue.source(name).isEmpty()) {
            List<String> known = new ArrayList<>(trackNames(false));
            catalogue.sources().stream().map(SourceKind::word).forEach(known::add);
            unknown(
                definition,
                use.name(),
                Fault.UNKNOWN_SOURCE,
                "chain, bus or kind of source",
                known);
          }
        }
      }
    }
  }

  private static boolean isItself(Definition definition, String name) {
    return definition instanceof Definition.Track track && track.name().text().equals(name);
  }

  private void checkBus(Definition definition, Name name) {
    if (scope.bus(name.text()).isPresent()) {
      return;
    }
    Optional<Definition.Track> chain = scope.track(name.text());
    if (chain.isPresent()) {
      report(
          Fault.NOT_A_BUS,
          definition.section(),
          name,
          "`" + name.text() + "` is a chain, not a bus",
          "Only a bus can receive other signals.",
          "Define it with `bus`, or go to another bus.",
          List.of(related(chain.get(), chain.get().name(), "defined here as a chain")),
          List.of());
    } else {
      unknown(definition, name, Fault.UNKNOWN_BUS, "bus", trackNames(true));
    }
  }

  private void unknown(
      Definition definition, Name name, Fault fault, String what, Collection<String> known) {
    List<String> near =
        fault == Fault.UNKNOWN_SOURCE
            ? SourceWords.meant(name.text(), known)
            : Nearest.to(name.text(), known);
    List<Fix> fixes = new ArrayList<>();
    for (String candidate : near) {
      fixes.add(
          new Fix(
              "Write `" + candidate + "`",
              Fix.Effect.GIVES_A_MEANING,
              near.size() == 1,
              List.of(new PlacedEdit(definition.section(), new TextEdit(name.span(), candidate)))));
    }
    String remedy =
        near.isEmpty()
            ? "Define it in this file, or import the file that defines it"
                + (fault == Fault.UNKNOWN_SOURCE
                    ? "; or write a kind: " + SourceKind.inWords(catalogue.sources()) + "."
                    : ".")
            : "Did you mean `" + String.join("` or `", near) + "`?";
    boolean isTrack = fault == Fault.UNKNOWN_PRESET && scope.track(name.text()).isPresent();
    report(
        fault,
        definition.section(),
        name,
        "there is no "
            + what
            + " `"
            + name.text()
            + "`"
            + (isTrack ? "; that is a chain or a bus" : ""),
        "",
        remedy,
        List.of(),
        fixes);
  }

  private void checkImport(Definition definition) {
    if (!(definition instanceof Definition.Import found)) {
      return;
    }
    String key = file.resolve(found.path());
    Name path = new Name(found.path(), found.pathSpan());
    if (project.file(key).isEmpty()) {
      report(
          Fault.IMPORT_NOT_FOUND,
          definition.section(),
          path,
          "the file `" + found.path() + "` cannot be read",
          "What it defines is unknown here.",
          "Mend the path, which counts from this file's folder, or put the file there.",
          List.of(),
          List.of());
    } else if (key.equals(file.key()) || importsBack(key)) {
      report(
          Fault.CIRCULAR_IMPORT,
          definition.section(),
          path,
          "`" + found.path() + "` imports this file in turn",
          "Each needs the other, so neither can be read alone.",
          "Move what both need into a third file.",
          List.of(),
          List.of());
    }
  }

  private boolean importsBack(String key) {
    return project.scope(key).files().stream()
        .anyMatch(seen -> seen.imports().contains(file.key()));
  }

  private void checkLabels(Definition definition) {
    List<Step> steps =
        definition instanceof Definition.Track track
            ? track.steps()
            : definition instanceof Definition.Preset preset ? preset.steps() : List.of();
    checkLabels(definition, steps, new LinkedHashMap<>());
  }

  private void checkLabels(Definition definition, List<Step> steps, Map<String, Name> first) {
    for (Step step : steps) {
      step.clauses()
          .label()
          .ifPresent(
              label -> {
                Name before = first.putIfAbsent(label.text(), label);
                if (before != null) {
                  report(
                      Fault.NAME_DEFINED_TWICE,
                      definition.section(),
                      label,
                      "the label `" + label.text() + "` stands here twice",
                      "A label must lead to one stage.",
                      "Give one of them another label.",
                      List.of(related(definition, before, "the first one")),
                      List.of());
                }
              });
      for (Branch branch : step.branches()) {
        checkLabels(definition, branch.steps(), first);
      }
    }
  }

  private void checkCircle(Definition definition) {
    if (definition instanceof Definition.Preset preset) {
      for (References.Use use : References.of(preset)) {
        boolean isCircle =
            use.kind() == References.Kind.PRESET
                && reaches(use.name().text(), preset.name().text(), new HashSet<>());
        if (isCircle) {
          report(
              Fault.CIRCULAR_APPLY,
              preset.section(),
              use.name(),
              "`" + preset.name().text() + "` comes back to itself",
              "Its stages would never end, so it is left out where it comes back.",
              "Remove this line.",
              List.of(),
              List.of());
        }
      }
    }
  }

  private boolean reaches(String from, String wanted, Set<String> seen) {
    if (from.equals(wanted)) {
      return true;
    }
    if (!seen.add(from)) {
      return false;
    }
    return scope
        .preset(from)
        .filter(
            preset ->
                References.of(preset).stream()
                    .filter(use -> use.kind() == References.Kind.PRESET)
                    .anyMatch(use -> reaches(use.name().text(), wanted, seen)))
        .isPresent();
  }

  private List<String> presetNames() {
    return scope.presets().stream().map(preset -> preset.name().text()).toList();
  }

  private List<String> trackNames(boolean busesOnly) {
    return scope.tracks().stream()
        .filter(track -> track.isBus() || !busesOnly)
        .map(track -> track.name().text())
        .toList();
  }

  private static Optional<Name> name(Definition definition) {
    if (definition instanceof Definition.Track track) {
      return Optional.of(track.name());
    }
    return definition instanceof Definition.Preset preset
        ? Optional.of(preset.name())
        : Optional.empty();
  }

  private static Finding.Related related(Definition definition, Name name, String what) {
    return new Finding.Related(new Place(definition.section(), name.span()), what);
  }

  private void report(
      Fault fault,
      Section section,
      Name at,
      String what,
      String why,
      String remedy,
      List<Finding.Related> related,
      List<Fix> fixes) {
    findings.add(
        Finding.ofText(fault, new Place(section, at.span()), what, why, remedy, related, fixes));
  }
}
