package chainwright.dsp.signal;

/**
 * A sound placed between left and right by a difference of level.
 *
 * <p>From the centre, where a sound of one channel has the law's gain in both, the near channel
 * rises to 0 dB and the far one falls to silence. With the angle θ from 0 (left) to 90° and {@code
 * k = law / -3.01 dB}, the gains are {@code cos^k θ} and {@code sin^k θ} for laws from −3.01 dB
 * down: at −3.01 dB the power is the same everywhere, at −6.02 dB the sum. Above −3.01 dB the far
 * channel falls as {@code 10^(law/20) √2 sin θ}; at 0 dB the near one stays as it is.
 *
 * <p>A sound of two channels is balanced instead: the near channel stays, the far one falls as much
 * below its gain at the centre. Channels from the third on pass.
 *
 * <p>Source: common practice, no source; the family of curves is ours.
 *
 * @param position from −1 (left) over 0 to 1 (right)
 * @param lawDb the gain of a sound of one channel at the centre [dB], from −6.03 to 0
 * @param isMono whether both channels hold the same sound
 */
public record PanDesign(double position, double lawDb, boolean isMono) implements ProcessorDesign {

  /** The gain of equal power in two channels: 10 lg 2 [dB]. */
  private static final double EQUAL_POWER_DB = -10 * Math.log10(2);

  /**
   * Checks the numbers.
   *
   * @param position from −1 to 1
   * @param lawDb the gain at the centre [dB]
   * @param isMono whether both channels hold the same sound
   * @throws IllegalArgumentException if a number is outside its range
   */
  public PanDesign {
    if (!(position >= -1 && position <= 1) || !(lawDb <= 0 && lawDb >= -6.03)) {
      throw new IllegalArgumentException(
          "the position must lie between -1 and 1 and the law between -6.03 dB and 0 dB, but were "
              + position
              + " and "
              + lawDb
              + " dB");
    }
  }

  /**
   * Returns the gain of the left channel.
   *
   * @return the factor, from 0 to 1
   */
  public double leftFactor() {
    return factor(-position);
  }

  /**
   * Returns the gain of the right channel.
   *
   * @return the factor, from 0 to 1
   */
  public double rightFactor() {
    return factor(position);
  }

  private double factor(double toward) {
    double placed = placed(toward);
    return isMono ? placed : Math.min(1, placed / placed(0));
  }

  /** The gain of the channel that a sound is moved toward by this much, from −1 to 1. */
  private double placed(double toward) {
    double exponent = lawDb / EQUAL_POWER_DB;
    double sine = Math.sin(Math.PI / 4 * (1 + toward));
    if (toward < 0 && exponent < 1) {
      return Math.pow(10, lawDb / 20) * Math.sqrt(2) * sine;
    }
    return Math.pow(sine, exponent);
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return wiring.channelCount() < 2
        ? new FactorDesign(1)
        : new Running(leftFactor(), rightFactor());
  }

  private record Running(double left, double right) implements Processor {

    @Override
    public void process(double[][] channels, int from, int to) {
      for (int i = from; i < to; i++) {
        channels[0][i] *= left;
        channels[1][i] *= right;
      }
    }

    @Override
    public void reset() {
      // Gains have no state.
    }
  }
}
