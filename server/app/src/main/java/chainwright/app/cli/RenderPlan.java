package chainwright.app.cli;

import chainwright.app.view.StepWord;
import chainwright.app.view.Unfinished;
import chainwright.engine.mix.MixNode;
import chainwright.engine.mix.MixOrder;
import chainwright.engine.mix.MixPlan;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.RateChanges;
import chainwright.engine.path.SignalPath;
import chainwright.engine.sound.PathSound;
import chainwright.engine.sound.SoundBuilder;
import chainwright.engine.sound.StageTap;
import chainwright.quantity.SampleRate;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Makes sound of what is written, or says why it cannot. */
final class RenderPlan {

  private RenderPlan() {}

  /**
   * Plans a render.
   *
   * @param subject what is meant, at the rate of the takes
   * @param choice which of its stages are heard
   * @param order the chains and buses
   * @param takes their takes
   * @param rate the sample rate of the file; empty for that which is delivered as written
   * @param tap listens to the stages
   * @return the plan, with a node at least
   * @throws IOException if not everything written would be heard
   */
  static MixPlan of(
      RenderSubject subject,
      RenderChoice choice,
      MixOrder order,
      RenderTakes takes,
      Optional<SampleRate> rate,
      StageTap tap)
      throws IOException {
    MixPlan plan =
        MixPlan.of(
            order,
            subject.isFed(),
            track -> subject.path(track, choice),
            takes.parts(),
            (path, isMono, latencyFrames) ->
                subject.isMeant(path.track())
                    ? delivered(choice.sound(isMono, latencyFrames, tap), path, rate)
                    : SoundBuilder.build(path, isMono, latencyFrames, tap));
    if (plan.nodes().isEmpty()) {
      throw new IOException(
          "no chain that goes to `"
              + subject.track().name().text()
              + "` names a `take`; write one, or name the sound that the bus gets by `--take`");
    }
    refuse(
        plan.missingKeys().stream()
            .map(
                missing ->
                    said(subject, missing.stage())
                        + " listens to `"
                        + missing.key()
                        + "` by `key`, which names no `take` or does not exist")
            .toList());
    refuseRateChanges(subject, plan);
    refuse(
        plan.nodes().stream()
            .flatMap(node -> node.path().uncomputed().stream())
            .filter(SplitElement.class::isInstance)
            .map(SplitElement.class::cast)
            .map(
                split ->
                    subject.line(split)
                        + StepWord.of(split.step())
                        + " "
                        + Unfinished.inWords(split))
            .toList());
    refuse(
        plan.silentStages().stream()
            .map(
                stage ->
                    said(subject, stage)
                        + " makes no sound yet, or not with these settings at this sample rate")
            .toList());
    return plan;
  }

  private static PathSound delivered(PathSound sound, SignalPath path, Optional<SampleRate> rate) {
    return rate.map(wanted -> sound.convertedTo(path.deliveredRate(), wanted)).orElse(sound);
  }

  /** Only what is meant may change the rate, and nothing of what is added or listened to. */
  private static void refuseRateChanges(RenderSubject subject, MixPlan plan) throws IOException {
    List<String> reasons = new ArrayList<>();
    for (MixNode node : plan.nodes()) {
      SignalPath path = node.path();
      for (StageElement change : RateChanges.enclosed(path)) {
        reasons.add(
            said(subject, change)
                + " changes the sample rate inside a block; move it to the end of the chain");
      }
      if (!subject.isMeant(path.track())) {
        for (StageElement change : RateChanges.effective(path)) {
          reasons.add(
              said(subject, change)
                  + " changes the sample rate, but `"
                  + plan.target().name()
                  + "` is made of or listens to this chain; move it to the end of `"
                  + plan.target().name()
                  + "`");
        }
      }
      for (RateChanges.Keyed keyed : RateChanges.keyed(path)) {
        reasons.add(
            said(subject, keyed.listener())
                + " listens to `"
                + keyed.key()
                + "` by `key` behind a change of the sample rate; move the"
                + " `sample-rate-conversion` behind it");
      }
    }
    refuse(reasons);
  }

  private static String said(RenderSubject subject, StageElement stage) {
    return subject.where(stage) + stage.word();
  }

  private static void refuse(List<String> reasons) throws IOException {
    if (!reasons.isEmpty()) {
      throw new IOException(
          "nothing was rendered, since not everything written would be heard; leave these out by"
              + " `--without`, or bypass them:\n"
              + reasons.stream().map(one -> "  " + one).collect(Collectors.joining("\n")));
    }
  }
}
