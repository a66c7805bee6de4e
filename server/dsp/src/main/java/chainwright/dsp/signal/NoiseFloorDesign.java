package chainwright.dsp.signal;

/**
 * A white noise that is there all the time, in each channel another, as of equipment.
 *
 * <p>Its level is that of its RMS value against a full-scale sine (AES17-2020, 3.12; second-hand),
 * so a noise of −80 dBFS has the power of a sine with a peak at −80 dBFS. The values are the sum of
 * two uniform ones. The same every time.
 *
 * @param levelDbfs its level [dBFS], finite
 * @param seed what the noise begins with; the same seed gives the same noise
 */
public record NoiseFloorDesign(double levelDbfs, long seed) implements ProcessorDesign {

  /**
   * Checks the level.
   *
   * @param levelDbfs its level [dBFS]
   * @param seed what the noise begins with
   * @throws IllegalArgumentException if the level is not finite
   */
  public NoiseFloorDesign {
    if (!Double.isFinite(levelDbfs)) {
      throw new IllegalArgumentException("the level must be finite, but was " + levelDbfs);
    }
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new Running(this, wiring.channelCount());
  }

  private static final class Running implements Processor {

    private final long seed;
    private final double factor;
    private final NoiseSource[] noises;

    Running(NoiseFloorDesign design, int channelCount) {
      seed = design.seed();
      // A sine of amplitude a has the power a²/2, the sum of two numbers from −1/2 to 1/2 has 1/6.
      factor = Math.sqrt(3) * Math.pow(10, design.levelDbfs() / 20);
      noises = new NoiseSource[channelCount];
      reset();
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int c = 0; c < noises.length; c++) {
        double[] channel = channels[c];
        NoiseSource noise = noises[c];
        for (int i = from; i < to; i++) {
          channel[i] += factor * (noise.next() + noise.next());
        }
      }
    }

    @Override
    public void reset() {
      for (int c = 0; c < noises.length; c++) {
        noises[c] = new NoiseSource(seed, c);
      }
    }
  }
}
