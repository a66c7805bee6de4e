package chainwright.app.assist;

import chainwright.notation.diagnostic.Place;
import chainwright.notation.model.Branch;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Name;
import chainwright.notation.model.Note;
import chainwright.notation.model.Step;
import chainwright.notation.project.Project;
import chainwright.notation.project.References;
import chainwright.notation.project.SourceFile;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Finds where a name is given and used. A name means what the imports of its file say: two files
 * that do not know each other may both have a chain {@code lead}, and a use of one is none of the
 * other.
 *
 * @param project the files that are known
 */
public record Names(Project project) {

  /** What a name stands for. */
  public enum Kind {
    /** A preset. */
    PRESET,
    /** A chain or a bus. */
    TRACK,
    /** The microphones of one sound, of all chains of that group that some file sees together. */
    GROUP,
    /** A stage of its chain. Between backticks in a note of that chain, it is spoken of. */
    LABEL
  }

  /**
   * A name under the caret.
   *
   * @param kind what it stands for
   * @param text the name
   * @param span where it stands, from the start of the definition's section
   * @param file the file
   * @param within the definition that it stands in
   */
  public record Found(Kind kind, String text, TextSpan span, SourceFile file, Definition within) {}

  private record Named(Kind kind, Name name) {}

  /**
   * Finds the name at a place.
   *
   * @param file the file
   * @param offset the place, from the file's start
   * @return the name; empty where none stands
   */
  public Optional<Found> at(SourceFile file, int offset) {
    int index = file.tree().sectionAt(offset);
    int inSection = offset - file.tree().startOf(index);
    return file.sections()
        .get(index)
        .definition()
        .flatMap(
            definition ->
                named(definition, file).stream()
                    .filter(one -> one.name().span().isTouchedBy(inSection))
                    .findFirst()
                    .map(
                        one ->
                            new Found(
                                one.kind(),
                                one.name().text(),
                                one.name().span(),
                                file,
                                definition)));
  }

  /**
   * Finds where a name is given.
   *
   * @param found the name
   * @return the place; for a group, which nobody gives, its first mention; empty if unknown
   */
  public Optional<Place> definition(Found found) {
    return switch (found.kind()) {
      case PRESET, TRACK -> target(found).map(Names::placeOfName);
      case LABEL ->
          labels(found.within()).stream()
              .filter(label -> label.text().equals(found.text()))
              .findFirst()
              .map(label -> new Place(found.within().section(), label.span()));
      case GROUP -> groupPlaces(found).stream().findFirst();
    };
  }

  /**
   * Finds where a name is used.
   *
   * @param found the name
   * @return the places of the uses, without the definition
   */
  public List<Place> uses(Found found) {
    return switch (found.kind()) {
      case PRESET, TRACK -> referencePlaces(found);
      case LABEL ->
          mentions(found.within()).stream()
              .filter(mention -> mention.text().equals(found.text()))
              .map(mention -> new Place(found.within().section(), mention.span()))
              .toList();
      case GROUP -> {
        List<Place> places = groupPlaces(found);
        yield places.subList(Math.min(1, places.size()), places.size());
      }
    };
  }

  /**
   * Finds what already has a name, where a second bearer would change what the text means.
   *
   * @param found the name that is to be changed
   * @param newName what it is to become
   * @return the place of the other bearer; empty if the name is free
   */
  public Optional<Place> bearer(Found found, String newName) {
    if (found.text().equals(newName)) {
      return Optional.empty();
    }
    Found other = new Found(found.kind(), newName, found.span(), found.file(), found.within());
    if (found.kind() == Kind.LABEL || found.kind() == Kind.GROUP) {
      return definition(other);
    }
    return seeing(found).stream()
        .flatMap(file -> lookUp(found.kind(), newName, file).stream())
        .findFirst()
        .map(Names::placeOfName);
  }

  /** All names in a definition that can be asked about, its own first. */
  private List<Named> named(Definition definition, SourceFile file) {
    List<Named> names = new ArrayList<>();
    ownName(definition).ifPresent(name -> names.add(new Named(kind(definition), name)));
    for (References.Use use : References.of(definition)) {
      switch (use.kind()) {
        case PRESET -> names.add(new Named(Kind.PRESET, use.name()));
        case BUS, TRACK -> names.add(new Named(Kind.TRACK, use.name()));
        case SPILL -> {
          // What no chain is called is a kind of source, which is not the author's to name.
          if (project.scope(file.key()).track(use.name().text()).isPresent()) {
            names.add(new Named(Kind.TRACK, use.name()));
          }
        }
      }
    }
    group(definition).ifPresent(name -> names.add(new Named(Kind.GROUP, name)));
    labels(definition).forEach(name -> names.add(new Named(Kind.LABEL, name)));
    mentions(definition).forEach(name -> names.add(new Named(Kind.LABEL, name)));
    return names;
  }

  private static Kind kind(Definition definition) {
    return definition instanceof Definition.Preset ? Kind.PRESET : Kind.TRACK;
  }

  private Optional<Definition> target(Found found) {
    boolean isOwn =
        ownName(found.within()).filter(name -> name.span().equals(found.span())).isPresent();
    return isOwn ? Optional.of(found.within()) : lookUp(found.kind(), found.text(), found.file());
  }

  private Optional<Definition> lookUp(Kind kind, String name, SourceFile from) {
    return kind == Kind.PRESET
        ? project.scope(from.key()).preset(name).map(preset -> preset)
        : project.scope(from.key()).track(name).map(track -> track);
  }

  private List<Place> referencePlaces(Found found) {
    Optional<Definition> target = target(found);
    List<Place> places = new ArrayList<>();
    for (SourceFile file : target.isPresent() ? project.files() : List.of(found.file())) {
      boolean isAsked = false;
      for (Definition definition : file.definitions()) {
        for (References.Use use : References.of(definition)) {
          boolean isKind = (use.kind() == References.Kind.PRESET) == (found.kind() == Kind.PRESET);
          if (isKind && use.name().text().equals(found.text())) {
            if (!isAsked && !isSame(lookUp(found.kind(), found.text(), file), target)) {
              break;
            }
            isAsked = true;
            places.add(new Place(definition.section(), use.name().span()));
          }
        }
      }
    }
    return places;
  }

  private static boolean isSame(Optional<Definition> one, Optional<Definition> other) {
    return one.map(Definition::section).orElse(null) == other.map(Definition::section).orElse(null);
  }

  /** The files in which the name means the same as under the caret. */
  private List<SourceFile> seeing(Found found) {
    Optional<Definition> target = target(found);
    return project.files().stream()
        .filter(file -> isSame(lookUp(found.kind(), found.text(), file), target))
        .toList();
  }

  /** The mentions of a group in the files that some file sees together, its own file first. */
  private List<Place> groupPlaces(Found found) {
    Set<SourceFile> members = new LinkedHashSet<>(List.of(found.file()));
    boolean isGrowing = true;
    while (isGrowing) {
      isGrowing = false;
      for (SourceFile file : project.files()) {
        List<SourceFile> together =
            project.scope(file.key()).files().stream()
                .filter(one -> one == found.file() || hasGroup(one, found.text()))
                .toList();
        boolean isJoined = together.stream().anyMatch(members::contains);
        isGrowing |= isJoined && members.addAll(together);
      }
    }
    List<Place> places = new ArrayList<>();
    for (SourceFile file : members) {
      for (Definition definition : file.definitions()) {
        group(definition)
            .filter(name -> name.text().equals(found.text()))
            .ifPresent(name -> places.add(new Place(definition.section(), name.span())));
      }
    }
    return places;
  }

  private static boolean hasGroup(SourceFile file, String name) {
    return file.definitions().stream()
        .anyMatch(one -> group(one).filter(group -> group.text().equals(name)).isPresent());
  }

  private static Optional<Name> group(Definition definition) {
    return definition instanceof Definition.Track track
        ? track.declarations().group()
        : Optional.empty();
  }

  private static List<Name> labels(Definition definition) {
    List<Name> names = new ArrayList<>();
    clauses(definition).forEach(clauses -> clauses.label().ifPresent(names::add));
    return names;
  }

  /** The labels that the notes of a definition speak of, between backticks. */
  private static List<Name> mentions(Definition definition) {
    List<Name> names = new ArrayList<>();
    String text = definition.section().text();
    List<Clauses> all = clauses(definition);
    for (Name label : labels(definition)) {
      String quoted = "`" + label.text() + "`";
      for (Clauses clauses : all) {
        for (Note note : clauses.notes()) {
          int at = text.indexOf(quoted, note.span().start());
          while (at >= 0 && at + quoted.length() <= note.span().end()) {
            names.add(new Name(label.text(), TextSpan.ofLength(at + 1, label.text().length())));
            at = text.indexOf(quoted, at + quoted.length());
          }
        }
      }
    }
    // A structure hands the notes of its block on, so that one note may be met twice.
    return names.stream().distinct().toList();
  }

  private static List<Clauses> clauses(Definition definition) {
    List<Clauses> all = new ArrayList<>();
    if (definition instanceof Definition.Track track) {
      all.add(track.clauses());
      collect(track.steps(), all);
    } else if (definition instanceof Definition.Preset preset) {
      all.add(preset.clauses());
      collect(preset.steps(), all);
    }
    return all;
  }

  private static void collect(List<Step> steps, List<Clauses> into) {
    for (Step step : steps) {
      into.add(step.clauses());
      if (step instanceof Step.Stage stage) {
        collect(stage.sideChain(), into);
      }
      for (Branch branch : step.branches()) {
        into.add(branch.clauses());
        collect(branch.steps(), into);
      }
    }
  }

  private static Place placeOfName(Definition definition) {
    return new Place(
        definition.section(), ownName(definition).map(Name::span).orElse(definition.lineSpan()));
  }

  private static Optional<Name> ownName(Definition definition) {
    if (definition instanceof Definition.Track track) {
      return Optional.of(track.name());
    }
    return definition instanceof Definition.Preset preset
        ? Optional.of(preset.name())
        : Optional.empty();
  }
}
