package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.app.view.ResponseWords;
import chainwright.app.view.StructurePlots;
import chainwright.app.view.Unfinished;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Step;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Says what a preset does, by itself and where it is applied.
 *
 * @param ground what the hover stands on
 */
record PresetHover(HoverGround ground) {

  /** Tells of a preset where it is defined or named. */
  HoverText of(Definition.Preset preset, TextSpan span) {
    List<PathElement> elements = new PathBuilder(ground.scope()).build(preset);
    HoverPage page = ground.page();
    page.say(answer("", preset, elements));
    page.plot(
        plots(preset.source())
            .single(title(preset), preset.name().text(), SignalPath.product(elements)));
    rest(page, preset, elements);
    page.say(usedBy(preset));
    return page.over(span);
  }

  /** Tells of a preset in its place in a path, with the path up to it. */
  HoverText applied(
      Step.Apply apply, Definition.Preset preset, Optional<SignalPath> path, TextSpan span) {
    List<PathElement> elements = new ArrayList<>();
    path.ifPresent(whole -> collect(whole.elements(), apply, elements));
    if (elements.isEmpty()) {
      elements.addAll(new PathBuilder(ground.scope()).build(preset));
    }
    Response own = SignalPath.product(elements);
    HoverPage page = ground.page();
    page.say(answer("apply ", preset, elements));
    Optional<SourceKind> source = path.flatMap(SignalPath::source).or(preset::source);
    Optional<Response> soFar = path.flatMap(whole -> upTo(whole, elements));
    page.plot(
        soFar
            .map(
                chain ->
                    plots(source)
                        .against(title(preset), preset.name().text(), own, "chain so far", chain))
            .orElseGet(() -> plots(source).single(title(preset), preset.name().text(), own)));
    if (apply.clauses().bypassed().isPresent()) {
      page.say("It is bypassed here: the sound passes unchanged.");
    }
    rest(page, preset, elements);
    page.notes(apply.clauses().notes());
    return page.over(span);
  }

  private String answer(String before, Definition.Preset preset, List<PathElement> elements) {
    double seconds = ground.latencySeconds(elements);
    return HoverPage.answer(
        before + preset.name().text(),
        HoverPage.plain(preset.title().isEmpty() ? "" : preset.title() + ", ")
            + ResponseWords.of(SignalPath.product(elements), ground.scope().sampleRate())
            + (seconds > 0 ? ", latency " + Readings.time(seconds) : ""));
  }

  private void rest(HoverPage page, Definition.Preset preset, List<PathElement> elements) {
    page.table(StageTables.HEAD, StageTables.rows(elements, ground));
    Unfinished.leftOut(elements).ifPresent(page::say);
    page.notes(preset.clauses().notes());
  }

  private String usedBy(Definition.Preset preset) {
    List<String> users = new ArrayList<>();
    for (Definition.Track track : ground.scope().tracks()) {
      if (applies(track.steps(), preset.name().text())) {
        users.add("`" + track.name().text() + "`");
      }
    }
    return users.isEmpty() ? "" : "Applied in " + String.join(", ", users) + ".";
  }

  private static boolean applies(List<Step> steps, String preset) {
    return steps.stream()
        .anyMatch(
            step ->
                (step instanceof Step.Apply apply && apply.preset().text().equals(preset))
                    || step.branches().stream()
                        .anyMatch(branch -> applies(branch.steps(), preset)));
  }

  private static void collect(
      List<PathElement> elements, Step.Apply apply, List<PathElement> into) {
    for (PathElement element : elements) {
      if (element.appliedAt().filter(place -> place.span().equals(apply.lineSpan())).isPresent()) {
        into.add(element);
      } else if (element instanceof SplitElement split) {
        split.branches().forEach(branch -> collect(branch.elements(), apply, into));
      }
    }
  }

  /** What the chain does up to and with the last of some elements of its main line. */
  private static Optional<Response> upTo(SignalPath path, List<PathElement> elements) {
    if (elements.isEmpty()) {
      return Optional.empty();
    }
    int last = path.elements().indexOf(elements.get(elements.size() - 1));
    return last < 0
        ? Optional.empty()
        : Optional.of(SignalPath.product(path.elements().subList(0, last + 1)));
  }

  private StructurePlots plots(Optional<SourceKind> source) {
    return new StructurePlots(source, ground.scope().sampleRate());
  }

  private static String title(Definition.Preset preset) {
    return preset.title().isEmpty() ? preset.name().text() : preset.title();
  }
}
