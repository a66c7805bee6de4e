package chainwright.app.assist;

import chainwright.app.plot.AltText;
import chainwright.app.plot.Plot;
import chainwright.app.plot.PlotTheme;
import chainwright.app.plot.SvgPlot;
import chainwright.app.plot.TextPlot;
import chainwright.app.view.StagePlots;
import chainwright.app.view.StageWords;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.rules.RuleBook;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.lowering.Vocabulary;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Deliberate;
import chainwright.notation.model.Note;
import chainwright.notation.model.Written;
import chainwright.notation.project.Scope;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.NumberText;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Says what stands at a place of a text.
 *
 * @param scope what the names mean
 * @param catalogue the trade's knowledge
 * @param picture the theme of pictures; empty for plots in characters
 */
public record Hovering(Scope scope, Catalogue catalogue, Optional<PlotTheme> picture) {

  /**
   * Says what stands at a place of a definition.
   *
   * @param definition the definition
   * @param offset the place, from the start of the definition's section
   * @return what to show; empty where there is nothing to say
   */
  public Optional<HoverText> at(Definition definition, int offset) {
    if (definition instanceof Definition.Track track) {
      SignalPath path = new PathBuilder(scope).build(track);
      return inStages(own(path.elements(), track.section()), Optional.of(path), offset)
          .or(() -> inDeclarations(track, offset))
          .or(
              () ->
                  track.name().span().isTouchedBy(offset)
                      ? Optional.of(header(track, path))
                      : Optional.empty())
          .or(() -> word(track.section(), offset));
    }
    if (definition instanceof Definition.Preset preset) {
      List<PathElement> elements = new PathBuilder(scope).build(preset);
      return inStages(own(elements, preset.section()), Optional.empty(), offset)
          .or(() -> word(preset.section(), offset));
    }
    return word(definition.section(), offset);
  }

  /** The elements that are written in a section themselves, those inside structures too. */
  private static List<PathElement> own(List<PathElement> elements, Section section) {
    List<PathElement> found = new ArrayList<>();
    for (PathElement element : elements) {
      if (element.place().section() == section && element.appliedAt().isEmpty()) {
        found.add(element);
      }
      if (element instanceof SplitElement split) {
        split.branches().forEach(branch -> found.addAll(own(branch.elements(), section)));
      }
    }
    return found;
  }

  private Optional<HoverText> inStages(
      List<PathElement> elements, Optional<SignalPath> path, int offset) {
    for (PathElement element : elements) {
      if (element instanceof StageElement stage && stage.place().span().isTouchedBy(offset)) {
        return Optional.of(inStage(stage, path, offset));
      }
    }
    return Optional.empty();
  }

  private HoverText inStage(StageElement stage, Optional<SignalPath> path, int offset) {
    for (Written written : stage.stage().settings().written()) {
      if (written.span().isTouchedBy(offset)) {
        return setting(stage, written);
      }
    }
    for (Deliberate deliberate : stage.stage().clauses().deliberates()) {
      if (deliberate.rule().span().isTouchedBy(offset)) {
        return rule(deliberate);
      }
    }
    return stage(stage, path);
  }

  private HoverText stage(StageElement stage, Optional<SignalPath> path) {
    StringBuilder text = new StringBuilder();
    text.append("**").append(stage.word()).append("**: ").append(StageWords.of(stage));
    if (stage.isBypassed()) {
      text.append(" (bypassed)");
    }
    text.append("\n\n");
    Optional<Response> soFar =
        path.filter(whole -> !stage.isPartial()).map(whole -> whole.responseUpTo(stage.stage()));
    StagePlots.stage(stage, soFar).ifPresent(plot -> append(text, plot));
    text.append(SettingLines.of(stage.stage().settings(), stage.context().source()));
    text.append("\nToo much of it: ").append(stage.stage().kind().overdone());
    text.append("\n\nIts place: ").append(stage.stage().kind().place()).append('\n');
    notes(stage.stage().clauses(), text);
    return new HoverText(text.toString(), stage.place().span());
  }

  private static void notes(Clauses clauses, StringBuilder text) {
    for (Note note : clauses.notes()) {
      text.append("\n> ").append(plain(note.text()).replace("\n", "\n> ")).append('\n');
    }
  }

  /** Keeps an author's words from being read as HTML, or as a picture that is fetched elsewhere. */
  private static String plain(String words) {
    return words.replace("&", "&amp;").replace("<", "&lt;").replace("![", "\\![");
  }

  private void append(StringBuilder text, Plot plot) {
    if (picture.isPresent()) {
      text.append("![")
          .append(plain(AltText.of(plot)).replace("[", "(").replace("]", ")").replace("\n", " "))
          .append("](")
          .append(SvgPlot.toDataUri(SvgPlot.renderLow(plot, picture.get())))
          .append(")\n\n");
    } else {
      text.append("```\n").append(TextPlot.render(plot)).append("\n```\n\n");
    }
  }

  private HoverText setting(StageElement stage, Written written) {
    StringBuilder text = new StringBuilder();
    text.append("**")
        .append(written.setting().name())
        .append("** ")
        .append(written.value())
        .append(": ")
        .append(written.setting().says())
        .append('\n');
    stage
        .stage()
        .settings()
        .range(written.setting(), stage.context().source())
        .ifPresent(
            range -> {
              text.append('\n')
                  .append(SettingLines.range(written.setting(), range, stage.stage().settings()));
              if (!range.note().isEmpty()) {
                text.append(" (").append(range.note()).append(')');
              }
              text.append("\n\nSource: ")
                  .append(String.join("; ", range.sources().stream().map(Citation::spelt).toList()))
                  .append('\n');
            });
    return new HoverText(text.toString(), written.span());
  }

  private HoverText rule(Deliberate deliberate) {
    String code = deliberate.rule().text();
    String text =
        RuleBook.find(code)
            .map(
                rule ->
                    "**"
                        + code
                        + "**: "
                        + rule.card().title()
                        + "\n\n"
                        + rule.card().why()
                        + sources(rule.card().sources())
                        + "\n\nBroken on purpose here: "
                        + plain(deliberate.reason()))
            .orElse("There is no rule `" + code + "`.");
    return new HoverText(text, deliberate.rule().span());
  }

  private String sources(List<String> keys) {
    return keys.isEmpty()
        ? ""
        : "\n\nSource: "
            + String.join(
                "; ",
                keys.stream()
                    .map(key -> catalogue.citation(key).map(Citation::spelt).orElse(key))
                    .toList());
  }

  private HoverText header(Definition.Track track, SignalPath path) {
    StringBuilder text = new StringBuilder();
    text.append("**")
        .append(track.name().text())
        .append("** ")
        .append(plain(track.title()))
        .append(": ")
        .append(path.stages().size())
        .append(" stages, latency ")
        .append(NumberText.format(path.latencySeconds() * 1000, 2))
        .append(" ms\n\n");
    append(text, StagePlots.chain(track.name().text(), path));
    text.append("| stage | what it does |\n|---|---|\n");
    for (StageElement stage : path.stages()) {
      text.append("| ")
          .append(stage.word())
          .append(" | ")
          .append(StageWords.of(stage))
          .append(" |\n");
    }
    notes(track.clauses(), text);
    return new HoverText(text.toString(), track.name().span());
  }

  private Optional<HoverText> inDeclarations(Definition.Track track, int offset) {
    return track
        .declarations()
        .source()
        .filter(source -> source.span().isTouchedBy(offset))
        .map(source -> new HoverText(sourceKind(source.kind()), source.span()));
  }

  private static String sourceKind(SourceKind kind) {
    StringBuilder text = new StringBuilder();
    text.append("**").append(kind.word()).append("**: ").append(kind.title());
    kind.lowestHz()
        .ifPresent(
            hertz ->
                text.append(", lowest note usually ")
                    .append(NumberText.format(hertz, 1))
                    .append(" Hz"));
    text.append("\n\n").append(kind.note()).append("\n\n");
    kind.zones()
        .forEach(
            zone ->
                text.append("- ")
                    .append(zone.name())
                    .append(": ")
                    .append(NumberText.format(zone.lowHz(), 0))
                    .append(" to ")
                    .append(NumberText.format(zone.highHz(), 0))
                    .append(" Hz\n"));
    return text.toString();
  }

  /** What is known of a word of the notation, of a preset, or of a bus, wherever it stands. */
  private Optional<HoverText> word(Section section, int offset) {
    String text = section.text();
    int start = Math.min(offset, text.length());
    while (start > 0 && isWordPart(text.charAt(start - 1))) {
      start--;
    }
    int end = Math.min(offset, text.length());
    while (end < text.length() && isWordPart(text.charAt(end))) {
      end++;
    }
    if (start == end) {
      return Optional.empty();
    }
    String word = text.substring(start, end);
    TextSpan span = new TextSpan(start, end);
    Optional<String> named =
        scope
            .preset(word)
            .map(this::presetText)
            .or(
                () ->
                    scope
                        .track(word)
                        .map(
                            track ->
                                header(track, new PathBuilder(scope).build(track)).markdown()));
    return named
        .or(() -> catalogue.source(word).map(Hovering::sourceKind))
        .or(() -> unit(word))
        .or(
            () ->
                Vocabulary.find(word)
                    .map(
                        known ->
                            "**" + word + "**: " + known.says() + "\n\n`" + known.form() + "`"))
        .map(markdown -> new HoverText(markdown, span));
  }

  private static Optional<String> unit(String word) {
    return Unit.parse(word)
        .filter(unit -> Vocabulary.find(word).isEmpty())
        .map(
            unit ->
                "**"
                    + unit.symbol()
                    + "**: "
                    + unit.spoken()
                    + ", "
                    + unit.dimension().description());
  }

  private String presetText(Definition.Preset preset) {
    StringBuilder text = new StringBuilder("**" + preset.name().text() + "** ");
    text.append(plain(preset.title())).append("\n\n");
    for (PathElement element : new PathBuilder(scope).build(preset)) {
      if (element instanceof StageElement stage) {
        text.append("- ")
            .append(stage.word())
            .append(": ")
            .append(StageWords.of(stage))
            .append('\n');
      }
    }
    return text.toString();
  }

  private static boolean isWordPart(char c) {
    return Character.isLetterOrDigit(c) || c == '-' || c == '_';
  }
}
