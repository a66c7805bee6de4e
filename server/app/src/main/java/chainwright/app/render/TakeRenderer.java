package chainwright.app.render;

import chainwright.app.audiofile.AudioFiles;
import chainwright.app.audiofile.AudioFormat;
import chainwright.app.audiofile.AudioReader;
import chainwright.app.audiofile.AudioWriter;
import chainwright.app.audiofile.WriteSummary;
import chainwright.dsp.loudness.LevelMatch;
import chainwright.engine.sound.LevelHold;
import chainwright.engine.sound.MeasuredLevel;
import java.io.IOException;
import java.util.Optional;

/**
 * Renders takes to files.
 *
 * <p>The take is gone through once where the render may be written as it is. Where its level is to
 * be changed, which only the whole tells, it is gone through again with the gain; so neither memory
 * nor disk holds more than one block and the file itself.
 */
public final class TakeRenderer {

  private final AudioReader take;
  private final RenderOrder order;
  private final RenderProgress progress;

  private TakeRenderer(AudioReader take, RenderOrder order, RenderProgress progress) {
    this.take = take;
    this.order = order;
    this.progress = progress;
  }

  /**
   * Renders.
   *
   * @param take the take; it is read from its start
   * @param order what is to be rendered
   * @param progress is told how far it is
   * @return what was rendered; the file is in its place then
   * @throws IOException if the take cannot be read, holds what is no number or makes the chain put
   *     it out, or if the file cannot be written; then nothing has changed
   */
  public static RenderReport render(AudioReader take, RenderOrder order, RenderProgress progress)
      throws IOException {
    return new TakeRenderer(take, order, progress).render();
  }

  private RenderReport render() throws IOException {
    RenderPass first = new RenderPass(take, order);
    AudioFormat format = format(first.channels());
    LevelMatch gain;
    try (AudioWriter writer = create(format)) {
      boolean isLikelyFinal = order.policy() != LevelPolicy.MATCHED;
      first.run(isLikelyFinal ? Optional.of(writer) : Optional.empty(), 0, progress, false);
      gain = gain(first.takeLevel(), first.renderLevel());
      if (isLikelyFinal && gain.gainDb() == 0) {
        return report(first, writer.finish(), gain);
      }
    }
    try (AudioWriter writer = create(format)) {
      new RenderPass(take, order).run(Optional.of(writer), gain.gainDb(), progress, true);
      return report(first, writer.finish(), gain);
    }
  }

  private AudioWriter create(AudioFormat format) throws IOException {
    return AudioFiles.create(order.output(), format, order.mayReplace());
  }

  private AudioFormat format(int channels) {
    AudioFormat own = take.format();
    return own.channels() == channels
        ? new AudioFormat(
            order.kind(), own.sampleRateHz(), channels, own.speakers(), order.samples())
        : AudioFormat.of(order.kind(), own.sampleRateHz(), channels, order.samples());
  }

  private LevelMatch gain(MeasuredLevel own, MeasuredLevel render) {
    return switch (order.policy()) {
      case AS_WRITTEN -> LevelMatch.NONE;
      case HELD -> new LevelMatch(LevelHold.gainDb(own, render, order.declaredLufs()).orElse(0), 0);
      case MATCHED ->
          LevelMatch.to(
              own.integratedLufs(),
              render.integratedLufs(),
              render.truePeakDbtp(),
              order.ceilingDbtp());
    };
  }

  private static RenderReport report(RenderPass pass, WriteSummary written, LevelMatch gain) {
    return new RenderReport(
        pass.channels(),
        written,
        pass.tailFrames(),
        pass.takeLevel(),
        pass.renderLevel(),
        gain.gainDb(),
        gain.heldBackDb());
  }
}
