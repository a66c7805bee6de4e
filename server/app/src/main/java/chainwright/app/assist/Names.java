package chainwright.app.assist;

import chainwright.notation.diagnostic.Place;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Name;
import chainwright.notation.project.References;
import chainwright.notation.project.SourceFile;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds where a preset, a chain or a bus is defined and used. */
public final class Names {

  /**
   * A name under the caret.
   *
   * @param text the name
   * @param isPreset whether it names a preset; else a chain or a bus
   * @param span where it stands, from the section's start
   */
  public record Found(String text, boolean isPreset, TextSpan span) {}

  private Names() {}

  /**
   * Finds the name at a place.
   *
   * @param definition the definition at the place
   * @param offset the place, from the section's start
   * @return the name; empty where none stands
   */
  public static Optional<Found> at(Definition definition, int offset) {
    Optional<Name> own = name(definition).filter(name -> name.span().isTouchedBy(offset));
    if (own.isPresent()) {
      boolean isPreset = definition instanceof Definition.Preset;
      return own.map(name -> new Found(name.text(), isPreset, name.span()));
    }
    return References.of(definition).stream()
        .filter(use -> use.name().span().isTouchedBy(offset))
        .findFirst()
        .map(
            use ->
                new Found(
                    use.name().text(), use.kind() == References.Kind.PRESET, use.name().span()));
  }

  /**
   * Finds where a name is defined.
   *
   * @param found the name
   * @param files the files to look in
   * @return the places of the name in its definitions
   */
  public static List<Place> definitions(Found found, List<SourceFile> files) {
    List<Place> places = new ArrayList<>();
    for (SourceFile file : files) {
      for (Definition definition : file.definitions()) {
        name(definition)
            .filter(name -> name.text().equals(found.text()))
            .filter(name -> definition instanceof Definition.Preset == found.isPreset())
            .ifPresent(name -> places.add(new Place(definition.section(), name.span())));
      }
    }
    return places;
  }

  /**
   * Finds where a name is used.
   *
   * @param found the name
   * @param files the files to look in
   * @return the places of the uses, without the definition
   */
  public static List<Place> uses(Found found, List<SourceFile> files) {
    List<Place> places = new ArrayList<>();
    for (SourceFile file : files) {
      for (Definition definition : file.definitions()) {
        for (References.Use use : References.of(definition)) {
          boolean isPreset = use.kind() == References.Kind.PRESET;
          if (use.name().text().equals(found.text()) && isPreset == found.isPreset()) {
            places.add(new Place(definition.section(), use.name().span()));
          }
        }
      }
    }
    return places;
  }

  private static Optional<Name> name(Definition definition) {
    if (definition instanceof Definition.Track track) {
      return Optional.of(track.name());
    }
    return definition instanceof Definition.Preset preset
        ? Optional.of(preset.name())
        : Optional.empty();
  }
}
