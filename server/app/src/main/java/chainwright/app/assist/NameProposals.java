package chainwright.app.assist;

import chainwright.notation.model.Definition;
import chainwright.notation.model.Name;
import chainwright.notation.project.References;
import chainwright.notation.project.Scope;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Proposes names that are defined somewhere, without those that would go round in a circle.
 *
 * @param scope what the names mean
 * @param owner the chain, bus or preset that is being written
 */
record NameProposals(Scope scope, String owner) {

  /** The chains and buses beside the one that is written. */
  List<Proposal> tracks() {
    return scope.tracks().stream()
        .filter(track -> !track.name().text().equals(owner))
        .map(NameProposals::proposal)
        .toList();
  }

  /** The buses that do not lead back here. */
  List<Proposal> buses() {
    return scope.tracks().stream()
        .filter(Definition.Track::isBus)
        .filter(bus -> !reaches(bus, References.Kind.BUS, new HashSet<>()))
        .map(NameProposals::proposal)
        .toList();
  }

  /** The presets that do not apply the one that is written. */
  List<Proposal> presets(boolean isInPreset) {
    return scope.presets().stream()
        .filter(preset -> !isInPreset || !reaches(preset, References.Kind.PRESET, new HashSet<>()))
        .map(
            preset ->
                Proposal.of(preset.name().text(), Proposal.Kind.NAME, "preset", preset.title()))
        .toList();
  }

  /** The groups that microphones were put into so far. */
  List<Proposal> groups() {
    return scope.tracks().stream()
        .flatMap(track -> track.declarations().group().stream())
        .map(Name::text)
        .distinct()
        .map(group -> Proposal.of(group, Proposal.Kind.NAME, "group of microphones"))
        .toList();
  }

  private boolean reaches(Definition from, References.Kind kind, Set<String> seen) {
    String name =
        from instanceof Definition.Preset preset
            ? preset.name().text()
            : ((Definition.Track) from).name().text();
    if (name.equals(owner)) {
      return true;
    }
    return seen.add(name)
        && References.of(from).stream()
            .filter(use -> use.kind() == kind)
            .anyMatch(
                use ->
                    (kind == References.Kind.PRESET
                            ? scope.preset(use.name().text()).map(Definition.class::cast)
                            : scope.bus(use.name().text()).map(Definition.class::cast))
                        .filter(next -> reaches(next, kind, seen))
                        .isPresent());
  }

  private static Proposal proposal(Definition.Track track) {
    return Proposal.of(
        track.name().text(), Proposal.Kind.NAME, track.isBus() ? "bus" : "chain", track.title());
  }
}
