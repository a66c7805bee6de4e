package chainwright.app.render;

import chainwright.app.audiofile.AudioFiles;
import chainwright.app.audiofile.AudioFormat;
import chainwright.app.audiofile.AudioReader;
import chainwright.app.audiofile.AudioWriter;
import chainwright.app.audiofile.WriteSummary;
import chainwright.dsp.loudness.LevelMatch;
import chainwright.engine.mix.MixTake;
import chainwright.engine.sound.LevelHold;
import chainwright.engine.sound.MeasuredLevel;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;

/**
 * Renders chains and whole sessions to files.
 *
 * <p>The takes are gone through once where the render may be written as it is. Where its level is
 * to be changed, which only the whole tells, they are gone through again with the gain; so neither
 * memory nor disk holds more than a few blocks and the files themselves.
 */
public final class MixRenderer {

  private final Map<String, AudioReader> takes;
  private final RenderOrder order;
  private final RenderProgress progress;

  private MixRenderer(Map<String, AudioReader> takes, RenderOrder order, RenderProgress progress) {
    this.takes = takes;
    this.order = order;
    this.progress = progress;
  }

  /**
   * Renders.
   *
   * @param takes the takes, by the names of their chains, each with a reader of its own that gives
   *     finite samples, as {@link chainwright.app.audiofile.RepairedReader} does
   * @param order what is to be rendered
   * @param progress is told how far it is
   * @return what was rendered; the files are in their places then
   * @throws IOException if a take cannot be read, if a chain puts out what is no number, or if a
   *     file cannot be written; then nothing has changed
   */
  public static RenderReport render(
      Map<String, AudioReader> takes, RenderOrder order, RenderProgress progress)
      throws IOException {
    return new MixRenderer(Map.copyOf(takes), order, progress).render();
  }

  private RenderReport render() throws IOException {
    AudioFormat format = format();
    if (order.stems().isEmpty()) {
      return render(format, Optional.empty());
    }
    try (StemFolder stems = begin(order.stems().get(), format)) {
      return render(format, Optional.of(stems));
    }
  }

  private RenderReport render(AudioFormat format, Optional<StemFolder> stems) throws IOException {
    MixPass first;
    LevelMatch gain;
    try (AudioWriter writer = create(format)) {
      boolean isLikelyFinal = order.policy() != LevelPolicy.MATCHED;
      first = pass(0, isLikelyFinal ? Optional.of(writer) : Optional.empty(), stems, false);
      if (stems.isPresent()) {
        stems.get().finish();
      }
      gain = gain(first.takeLevel(), first.renderLevel());
      if (isLikelyFinal && gain.gainDb() == 0) {
        return report(first, writer, gain, stems);
      }
    }
    try (AudioWriter writer = create(format)) {
      pass(gain.gainDb(), Optional.of(writer), Optional.empty(), true);
      return report(first, writer, gain, stems);
    }
  }

  private MixPass pass(
      double gainDb, Optional<AudioWriter> writer, Optional<StemFolder> stems, boolean isAgain)
      throws IOException {
    MixPass pass = new MixPass(takes, order, gainDb, writer, stems, progress, isAgain);
    pass.run();
    return pass;
  }

  private AudioWriter create(AudioFormat format) throws IOException {
    return AudioFiles.create(order.output(), format, order.mayReplace());
  }

  /** The file says of its channels what a take of as many says, else what is usual. */
  private AudioFormat format() {
    int channels = order.plan().target().channelCount();
    return takes.values().stream()
        .map(AudioReader::format)
        .filter(own -> takes.size() == 1 && own.channels() == channels)
        .findFirst()
        .map(
            own ->
                new AudioFormat(
                    order.kind(), order.fileRateHz(), channels, own.speakers(), order.samples()))
        .orElseGet(
            () -> AudioFormat.of(order.kind(), order.fileRateHz(), channels, order.samples()));
  }

  private static StemFolder begin(StemOrder stems, AudioFormat file) throws IOException {
    return StemFolder.begin(
        stems.folder(),
        AudioFormat.of(file.file(), stems.to().hertz(), file.channels(), file.samples()));
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

  private RenderReport report(
      MixPass pass, AudioWriter writer, LevelMatch gain, Optional<StemFolder> stems)
      throws IOException {
    WriteSummary written = writer.finish();
    Optional<StemSummary> folder = Optional.empty();
    if (stems.isPresent()) {
      folder = Optional.of(stems.get().commit());
    }
    long takesEnd =
        order.plan().heardTakes().stream()
            .flatMap(node -> node.take().stream())
            .mapToLong(MixTake::endFrame)
            .max()
            .orElse(0);
    return new RenderReport(
        order.plan().target().channelCount(),
        written,
        Math.max(0, order.toFrame() - Math.max(order.fromFrame(), takesEnd)),
        pass.takeCount(),
        pass.takeLevel(),
        pass.renderLevel(),
        gain.gainDb(),
        gain.heldBackDb(),
        folder);
  }
}
