package chainwright.dsp.nonlinear;

import chainwright.dsp.filter.BiquadCoefficients;
import chainwright.dsp.filter.CascadeFilter;
import chainwright.dsp.signal.NumberGuard;
import chainwright.dsp.signal.Processor;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A running saturation of the channels of one signal, each on its own, made by {@link
 * SaturationModel#newProcessor}.
 *
 * <p>It runs at the rate it is given, and what the shaper makes above half that rate folds back:
 * oversampling is the caller's. The output does not depend on the size of blocks. A NaN sample
 * comes out as NaN, counts as silence and leaves nothing behind; infinities count as ±10¹⁵.
 */
public final class Saturator implements Processor {

  /** How many frames are worked on at once, so that they stay in the cache. */
  private static final int CHUNK_FRAMES = 512;

  private final CascadeFilter before;
  private final Shaper shaper;
  private final CascadeFilter after;
  private final List<BiasShift.Running> biases;
  private final int channelCount;

  /** NaN where NaN came in, else 0, of each channel. */
  private final double[][] marks;

  Saturator(
      EmphasisSection emphasis,
      DrivenShaper shaper,
      EmphasisSection output,
      Optional<BiasShift> bias,
      double sampleRateHz,
      int channelCount) {
    if (!(sampleRateHz > 0) || Double.isInfinite(sampleRateHz)) {
      throw new IllegalArgumentException(
          "the sample rate must be finite and above 0, but was " + sampleRateHz);
    }
    double gain = Harmonics.toAmplitude(shaper.driveDb());
    before = new CascadeFilter(sections(sampleRateHz, emphasis), gain, channelCount);
    this.shaper = shaper.base();
    after =
        new CascadeFilter(
            sections(sampleRateHz, emphasis.inverse(), output), 1 / gain, channelCount);
    this.channelCount = channelCount;
    biases =
        bias.map(
                design ->
                    Stream.generate(() -> new BiasShift.Running(design, sampleRateHz))
                        .limit(channelCount)
                        .toList())
            .orElse(List.of());
    marks = new double[channelCount][CHUNK_FRAMES];
  }

  private static List<BiquadCoefficients> sections(
      double sampleRateHz, EmphasisSection... sections) {
    return Stream.of(sections)
        .filter(section -> !section.isFlat())
        .map(section -> section.design(sampleRateHz))
        .toList();
  }

  @Override
  public void process(double[][] channels, int from, int to) {
    for (int start = from; start < to; start += CHUNK_FRAMES) {
      processChunk(channels, start, Math.min(CHUNK_FRAMES, to - start));
    }
  }

  private void processChunk(double[][] channels, int start, int count) {
    boolean isSound = true;
    for (int c = 0; c < channelCount; c++) {
      isSound &= NumberGuard.isSound(channels[c], start, count);
    }
    if (!isSound) {
      for (int c = 0; c < channelCount; c++) {
        NumberGuard.guard(channels[c], start, marks[c], count);
      }
    }
    before.process(channels, start, start + count);
    for (int c = 0; c < biases.size(); c++) {
      biases.get(c).process(channels[c], start, count);
    }
    for (int c = 0; c < channelCount; c++) {
      shaper.process(channels[c], start, count);
    }
    after.process(channels, start, start + count);
    if (!isSound) {
      for (int c = 0; c < channelCount; c++) {
        for (int i = 0; i < count; i++) {
          channels[c][start + i] += marks[c][i];
        }
      }
    }
  }

  @Override
  public void reset() {
    before.reset();
    after.reset();
    for (BiasShift.Running bias : biases) {
      bias.reset();
    }
  }
}
