package chainwright.app.assist;

import chainwright.app.plot.FrequencyPlot;
import chainwright.app.view.DecayPlots;
import chainwright.app.view.DynamicsPlots;
import chainwright.app.view.ResponseWords;
import chainwright.app.view.StagePlots;
import chainwright.app.view.StageWords;
import chainwright.app.view.StepPlots;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.stage.StageSound;
import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Value;
import chainwright.notation.model.Written;
import chainwright.notation.text.TextSpan;
import java.util.Optional;
import java.util.Set;

/**
 * Says what a stage does, and what one of its settings means here.
 *
 * @param ground what the hover stands on
 */
record StageHover(HoverGround ground) {

  private static final Set<String> TIMES =
      Set.of("attack", "release", "hold", "fast", "slow", "split", "rms-window");
  private static final Set<String> LEVELS =
      Set.of(
          "threshold",
          "ratio",
          "knee",
          "range",
          "hysteresis",
          "make-up",
          "reduction",
          "ceiling",
          "max-reduction",
          "max-cut");
  private static final Set<String> DETECTION = Set.of("key", "band");

  /** Tells of a stage of a path. */
  HoverText of(StageElement stage, Optional<SignalPath> path) {
    HoverPage page = ground.page();
    page.say(answer(stage, ""));
    Optional<Response> soFar =
        path.filter(whole -> !stage.isPartial()).map(whole -> whole.responseUpTo(stage.stage()));
    StagePlots.stage(stage, soFar, ground.nominal()).ifPresent(page::plot);
    boolean isRead =
        stage
            .sound()
            .filter(sound -> sound.curve().isPresent() || sound.harmonics().isPresent())
            .isPresent();
    if (isRead) {
      page.say(ground.nominal().inWords());
    }
    StepPlots.of(stage).ifPresent(page::plot);
    StagePlots.detection(stage, Optional.empty()).ifPresent(page::plot);
    return rest(page, stage).over(stage.place().span());
  }

  /** Tells of a stage that stands in another one's side-chain. */
  HoverText inSideChain(StageElement inner, StageElement stage) {
    HoverPage page = ground.page();
    page.say(answer(inner, ", in what the detector of `" + stage.word() + "` hears"));
    Optional<FrequencyPlot> heard = StagePlots.detection(stage, Optional.of(inner));
    heard.ifPresent(page::plot);
    if (heard.isEmpty()) {
      StagePlots.stage(inner, Optional.empty(), ground.nominal()).ifPresent(page::plot);
    }
    page.say("The sound itself does not pass through it.");
    return rest(page, inner).over(inner.place().span());
  }

  /** Tells of the block with which a stage filters what its detector hears. */
  HoverText sideChain(StageElement owner, TextSpan span) {
    HoverPage page = ground.page();
    page.say(HoverPage.answer("side-chain", hears(owner)));
    StagePlots.detection(owner, Optional.empty()).ifPresent(page::plot);
    page.table(StageTables.HEAD, StageTables.rows(owner.sideChain(), ground));
    page.say("The sound itself does not pass through it.");
    return page.over(span);
  }

  private String answer(StageElement stage, String where) {
    return HoverPage.answer(stage.word(), StageWords.of(stage, ground.nominal()))
        + where
        + (stage.isBypassed() ? " (bypassed)" : "");
  }

  private static HoverPage rest(HoverPage page, StageElement stage) {
    return page.say(SettingLines.of(stage.stage().settings(), stage.context().source()))
        .say("Too much of it: " + stage.stage().kind().overdone())
        .say("Its place: " + stage.stage().kind().place())
        .notes(stage.stage().clauses().notes());
  }

  /** Tells of a setting of a stage. */
  HoverText setting(StageElement stage, Written written) {
    HoverPage page = ground.page();
    said(page, stage.stage().settings(), written, stage.context().source());
    String name = written.setting().name();
    if (written.value() instanceof Value.Reference reference) {
      ground
          .scope()
          .track(reference.name())
          .ifPresent(track -> page.say("It listens to " + ground.titled(track) + "."));
    }
    if (TIMES.contains(name)) {
      StepPlots.of(stage).ifPresent(page::plot);
    } else if (LEVELS.contains(name)) {
      stage
          .sound()
          .flatMap(StageSound::curve)
          .ifPresent(
              curve ->
                  page.plot(DynamicsPlots.level(stage, curve, ground.nominal()))
                      .say(ground.nominal().inWords()));
    } else if (DETECTION.contains(name)) {
      page.say("It hears " + hears(stage) + ".");
      StagePlots.detection(stage, Optional.empty()).ifPresent(page::plot);
    } else {
      DecayPlots.of(stage).ifPresent(page::plot);
    }
    return page.over(written.span());
  }

  /** Tells of a setting of a structure. */
  HoverText setting(Settings settings, Written written, Optional<SourceKind> source) {
    HoverPage page = ground.page();
    said(page, settings, written, source);
    return page.over(written.span());
  }

  private static void said(
      HoverPage page, Settings settings, Written written, Optional<SourceKind> source) {
    page.say(
        "**"
            + written.setting().name()
            + "** "
            + Settings.inWords(written.setting(), written.value())
            + ": "
            + written.setting().says());
    Optional<RangeRow> row = settings.row(written.setting(), source);
    if (row.isPresent()) {
      String note = row.get().range().note();
      String bar = SettingLines.range(written.setting(), row.get(), settings);
      page.say(bar + (note.isEmpty() ? "" : " (" + note + ")"))
          .say(bar.startsWith("`") ? SettingLines.KEY : "")
          .say(
              "Source: "
                  + Cited.briefly(
                      row.get().range().sources().stream().map(Citation::spelt).toList(),
                      settings.kind().word() + " " + written.setting().name())
                  + ".");
    }
  }

  private static String hears(StageElement stage) {
    return stage
        .sound()
        .flatMap(StageSound::detection)
        .map(heard -> ResponseWords.of(heard, stage.context().rate()))
        .orElse("all frequencies alike");
  }
}
