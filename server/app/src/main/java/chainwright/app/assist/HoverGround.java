package chainwright.app.assist;

import chainwright.app.plot.PlotTheme;
import chainwright.app.view.Nominal;
import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.sound.SoundBuilder;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Citation;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import java.util.List;
import java.util.Optional;

/**
 * What every hover stands on.
 *
 * @param scope what the names mean
 * @param catalogue the trade's knowledge
 * @param picture the theme of pictures; empty for plots in characters
 */
record HoverGround(Scope scope, Catalogue catalogue, Optional<PlotTheme> picture) {

  HoverPage page() {
    return new HoverPage(picture);
  }

  Nominal nominal() {
    return Nominal.of(scope);
  }

  SignalPath path(Definition.Track track) {
    return new PathBuilder(scope).build(track);
  }

  /** Returns how much later elements in a row put out what comes in [s]. */
  double latencySeconds(List<PathElement> elements) {
    return SoundBuilder.latencySeconds(scope.alignment(), elements);
  }

  String sources(List<String> keys) {
    return keys.isEmpty()
        ? ""
        : "Source: "
            + String.join(
                "; ",
                keys.stream()
                    .map(key -> catalogue.citation(key).map(Citation::spelt).orElse(key))
                    .toList());
  }

  /** Names a chain or bus with its title. */
  String titled(Definition.Track track) {
    String name = "`" + track.name().text() + "`";
    return track.title().isEmpty() ? name : name + " (" + HoverPage.plain(track.title()) + ")";
  }
}
