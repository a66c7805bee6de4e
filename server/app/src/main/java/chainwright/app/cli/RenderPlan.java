package chainwright.app.cli;

import chainwright.engine.mix.MixOrder;
import chainwright.engine.mix.MixPlan;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.sound.SoundBuilder;
import chainwright.engine.sound.StageTap;
import java.io.IOException;
import java.util.List;
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
   * @param tap listens to the stages
   * @return the plan, with a node at least
   * @throws IOException if not everything written would be heard
   */
  static MixPlan of(
      RenderSubject subject, RenderChoice choice, MixOrder order, RenderTakes takes, StageTap tap)
      throws IOException {
    MixPlan plan =
        MixPlan.of(
            order,
            subject.isFed(),
            track -> subject.path(track, choice),
            takes.parts(),
            (path, isMono, latencyFrames) ->
                subject.isMeant(path.track())
                    ? choice.sound(isMono, latencyFrames, tap)
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
    refuse(
        plan.silentStages().stream()
            .map(
                stage ->
                    said(subject, stage)
                        + " makes no sound yet, or not with these settings at this sample rate")
            .toList());
    return plan;
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
