package chainwright.dsp.signal;

/** Shortens words as {@link DitherDesign} says. */
final class Dither implements Processor {

  private final DitherDesign design;
  private final double scale;
  private final double feedback1;
  private final double feedback2;
  private final NoiseSource[] noises;

  /** The error of the last sample and of the one before, a pair a channel [steps]. */
  private final double[] lastErrors;

  private final double[] olderErrors;

  Dither(DitherDesign design, int channelCount) {
    this.design = design;
    this.scale = 1L << (design.bits() - 1);
    this.noises = new NoiseSource[channelCount];
    this.lastErrors = new double[channelCount];
    this.olderErrors = new double[channelCount];
    // (1 - z^-1)^n = 1 - feedback1 z^-1 - feedback2 z^-2.
    feedback1 =
        switch (design.shape()) {
          case FLAT -> 0;
          case FIRST_ORDER -> 1;
          case SECOND_ORDER -> 2;
        };
    feedback2 = design.shape() == DitherDesign.Shape.SECOND_ORDER ? -1 : 0;
    reset();
  }

  @Override
  public void process(double[][] channels, int from, int to) {
    double half = design.widthSteps() / 2;
    for (int channel = 0; channel < channels.length; channel++) {
      double[] samples = channels[channel];
      NoiseSource noise = noises[channel];
      double last = lastErrors[channel];
      double older = olderErrors[channel];
      for (int i = from; i < to; i++) {
        double wanted = samples[i] * scale - feedback1 * last - feedback2 * older;
        double rounded = Math.rint(wanted + half * (noise.next() + noise.next()));
        double error = rounded - wanted;
        samples[i] = rounded / scale;
        older = last;
        last = Double.isFinite(error) ? error : 0;
      }
      lastErrors[channel] = last;
      olderErrors[channel] = older;
    }
  }

  @Override
  public void reset() {
    for (int channel = 0; channel < noises.length; channel++) {
      noises[channel] = new NoiseSource(design.seed(), channel);
      lastErrors[channel] = 0;
      olderErrors[channel] = 0;
    }
  }
}
