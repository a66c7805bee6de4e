package chainwright.app.assist;

import chainwright.app.plot.PlotTheme;
import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.model.Branch;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Deliberate;
import chainwright.notation.model.Lowered;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Step;
import chainwright.notation.model.Written;
import chainwright.notation.project.Scope;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Section;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextSpan;
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

  /** How the codes of words begin that nothing is known of. */
  private static final String UNKNOWN = "unknown-";

  /**
   * Says what stands at a place of a section: of a word that means nothing there, what it may have
   * meant.
   *
   * @param lowered the section and what it says
   * @param found what was found in the text
   * @param offset the place, from the section's start
   * @return what to show; empty where there is nothing to say
   */
  public Optional<HoverText> at(Lowered lowered, List<Finding> found, int offset) {
    return found.stream()
        .filter(finding -> finding.place().section() == lowered.section())
        .filter(finding -> finding.code().startsWith(UNKNOWN))
        .filter(finding -> finding.place().span().isTouchedBy(offset))
        .findFirst()
        .map(
            finding ->
                new HoverGround(scope, catalogue, picture)
                    .page()
                    .say(HoverPage.plain(finding.what()) + ".")
                    .say(HoverPage.plain(finding.remedy()))
                    .over(finding.place().span()))
        .or(() -> lowered.definition().flatMap(definition -> at(definition, offset)));
  }

  /**
   * Says what stands at a place of a definition.
   *
   * @param definition the definition
   * @param offset the place, from the start of the definition's section
   * @return what to show; empty where there is nothing to say
   */
  public Optional<HoverText> at(Definition definition, int offset) {
    HoverGround ground = new HoverGround(scope, catalogue, picture);
    Section section = definition.section();
    Optional<HoverText> told = Optional.empty();
    if (definition instanceof Definition.Track track) {
      SignalPath path = ground.path(track);
      told =
          new Place(ground, section, offset, Optional.of(path), path.source())
              .inside(path.elements(), track.steps())
              .or(() -> header(ground, track, path, offset))
              .or(() -> declaration(ground, track, path, offset));
    } else if (definition instanceof Definition.Preset preset) {
      List<PathElement> elements = new PathBuilder(scope).build(preset);
      told =
          new Place(ground, section, offset, Optional.empty(), preset.source())
              .inside(elements, preset.steps())
              .or(
                  () ->
                      preset.name().span().isTouchedBy(offset)
                          ? Optional.of(new PresetHover(ground).of(preset, preset.name().span()))
                          : Optional.empty());
    } else if (definition instanceof Definition.Session session) {
      told =
          onWord(section, offset)
              .flatMap(head -> new SessionHover(ground).of(session, head.text(), head.span()));
    }
    return told.or(() -> new WordHover(ground).at(section, offset));
  }

  private static Optional<HoverText> header(
      HoverGround ground, Definition.Track track, SignalPath path, int offset) {
    TextSpan name = track.name().span();
    return name.isTouchedBy(offset)
        ? Optional.of(new TrackHover(ground).of(track, path, name))
        : Optional.empty();
  }

  private static Optional<HoverText> declaration(
      HoverGround ground, Definition.Track track, SignalPath path, int offset) {
    Optional<Statement> statement = StatementAt.find(track.section(), offset);
    boolean isOnUnit = statement.filter(one -> isOnUnit(one, offset)).isPresent();
    return statement
        .filter(one -> !isOnUnit)
        .flatMap(
            one ->
                one.head()
                    .flatMap(
                        head ->
                            new DeclarationHover(ground, track, path)
                                .of(head.text(), one.lineSpan())));
  }

  /** A unit has a hover of its own. */
  private static boolean isOnUnit(Statement statement, int offset) {
    return statement.items().stream()
        .anyMatch(
            item ->
                item instanceof Item.Amount amount
                    && amount.unit().isPresent()
                    && amount.unitSpan().isTouchedBy(offset));
  }

  private static Optional<Item.Word> onWord(Section section, int offset) {
    return StatementAt.find(section, offset)
        .filter(one -> !isOnUnit(one, offset))
        .flatMap(Statement::head);
  }

  /** A place among the stages of a path. */
  private record Place(
      HoverGround ground,
      Section section,
      int offset,
      Optional<SignalPath> path,
      Optional<SourceKind> source) {

    Optional<HoverText> inside(List<PathElement> elements, List<Step> steps) {
      return inElements(elements).or(() -> onApply(steps));
    }

    private Optional<HoverText> inElements(List<PathElement> elements) {
      for (PathElement element : elements) {
        Optional<HoverText> told = Optional.empty();
        if (element instanceof StageElement stage && isWrittenHere(element, stage.stage())) {
          told = inStage(stage);
        } else if (element instanceof SplitElement split && isWrittenHere(element, split.step())) {
          told = inSplit(split);
        }
        if (told.isPresent()) {
          return told;
        }
      }
      return Optional.empty();
    }

    private boolean isWrittenHere(PathElement element, Step step) {
      return element.place().section() == section
          && element.appliedAt().isEmpty()
          && step.span().isTouchedBy(offset);
    }

    private Optional<HoverText> inStage(StageElement stage) {
      StageHover hover = new StageHover(ground);
      if (stage.place().span().isTouchedBy(offset)) {
        return clause(stage.stage().clauses())
            .or(() -> written(stage).map(written -> hover.setting(stage, written)))
            .or(() -> Optional.of(hover.of(stage, path)));
      }
      for (PathElement element : stage.sideChain()) {
        if (element instanceof StageElement inner && inner.stage().span().isTouchedBy(offset)) {
          return clause(inner.stage().clauses())
              .or(() -> written(inner).map(written -> hover.setting(inner, written)))
              .or(() -> Optional.of(hover.inSideChain(inner, stage)));
        }
      }
      return onWord(section, offset)
          .filter(head -> head.text().equals("side-chain"))
          .map(head -> hover.sideChain(stage, head.span()));
    }

    private Optional<Written> written(StageElement stage) {
      return written(stage.stage().settings());
    }

    private Optional<Written> written(Settings settings) {
      return settings.written().stream()
          .filter(written -> written.span().isTouchedBy(offset))
          .findFirst();
    }

    private Optional<HoverText> inSplit(SplitElement split) {
      StructureHover hover = new StructureHover(ground, path, source);
      if (split.place().span().isTouchedBy(offset)) {
        return clause(split.step().clauses())
            .or(() -> settingsOf(split.step()).flatMap(this::inSettings))
            .or(() -> Optional.of(hover.of(split)));
      }
      for (PathBranch branch : split.branches()) {
        Branch written = branch.branch();
        if (written.lineSpan().isTouchedBy(offset)) {
          return clause(written.clauses())
              .or(() -> inSettings(written.settings()))
              .or(() -> Optional.of(hover.branch(branch, split)));
        }
        Optional<HoverText> inner = inElements(branch.elements());
        if (inner.isPresent()) {
          return inner;
        }
      }
      return Optional.empty();
    }

    private static Optional<Settings> settingsOf(Step step) {
      if (step instanceof Step.Insert insert) {
        return Optional.of(insert.settings());
      }
      return step instanceof Step.Multiband multiband
          ? Optional.of(multiband.settings())
          : Optional.empty();
    }

    private Optional<HoverText> inSettings(Settings settings) {
      return written(settings)
          .map(written -> new StageHover(ground).setting(settings, written, source));
    }

    private Optional<HoverText> onApply(List<Step> steps) {
      for (Step step : steps) {
        if (!step.span().isTouchedBy(offset)) {
          continue;
        }
        if (step instanceof Step.Apply apply) {
          return clause(apply.clauses())
              .or(
                  () ->
                      ground
                          .scope()
                          .preset(apply.preset().text())
                          .map(
                              preset ->
                                  new StructureHover(ground, path, source)
                                      .apply(apply, preset, apply.lineSpan())));
        }
        for (Branch branch : step.branches()) {
          Optional<HoverText> inner = onApply(branch.steps());
          if (inner.isPresent()) {
            return inner;
          }
        }
      }
      return Optional.empty();
    }

    private Optional<HoverText> clause(Clauses clauses) {
      for (Deliberate deliberate : clauses.deliberates()) {
        if (deliberate.rule().span().isTouchedBy(offset)) {
          return Optional.of(new WordHover(ground).rule(deliberate));
        }
      }
      return Optional.empty();
    }
  }
}
