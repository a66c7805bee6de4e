package chainwright.dsp.reverb;

import chainwright.dsp.filter.CascadeFilter;
import chainwright.dsp.filter.Curve;
import chainwright.dsp.filter.FilterCascade;
import chainwright.dsp.filter.PassFamily;
import chainwright.dsp.filter.PassPrototypes;
import chainwright.dsp.signal.Processor;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.quantity.Frequency;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Repeats of a sound, without the sound itself: each as late again, softer by the feedback and
 * through the damping once more; the first through it once, and as loud as the sound.
 *
 * <p>Channels have nothing to do with one another. The damping is a first-order Butterworth
 * low-pass by the bilinear transform, which raises no frequency: with a feedback below 1 the
 * repeats always die away. In frequency: z⁻ᴰ L / (1 − f z⁻ᴰ L).
 *
 * @param delayFrames the time from repeat to repeat [frames], ≥ 1
 * @param feedbackShare the factor from one repeat to the next, 0 to 0.99
 * @param damping the cutoff of the low-pass; empty for none
 * @param rate the sample rate
 */
public record EchoDesign(
    int delayFrames, double feedbackShare, Optional<Frequency> damping, SampleRate rate)
    implements ProcessorDesign {

  /** What is left after a fall of 90 dB. */
  private static final double LEFT = Math.pow(10, -90 / 20.0);

  /** The longest piece that is worked on at once [frames]. */
  private static final int LONGEST_PIECE = 512;

  private static final double NOTHING = 1e-30;

  /**
   * Checks the numbers.
   *
   * @param delayFrames the time from repeat to repeat [frames]
   * @param feedbackShare the factor from one repeat to the next
   * @param damping the cutoff of the low-pass
   * @param rate the sample rate
   * @throws IllegalArgumentException if a number is outside its range
   */
  public EchoDesign {
    if (delayFrames < 1 || !(feedbackShare >= 0 && feedbackShare <= 0.99)) {
      throw new IllegalArgumentException(
          "the time must be at least 1 frame and the feedback lie between 0 and 0.99, but were "
              + delayFrames
              + " and "
              + feedbackShare);
    }
  }

  /**
   * Returns how long it takes until the repeats have fallen by 90 dB; where the damping takes
   * nothing.
   */
  @Override
  public int tailFrames() {
    double more = feedbackShare == 0 ? 0 : Math.ceil(Math.log(LEFT) / Math.log(feedbackShare));
    double ringing =
        damping
            .map(cutoff -> 90 / 20.0 * Math.log(10) * rate.hertz() / (2 * Math.PI * cutoff.hertz()))
            .orElse(0.0);
    return (int) Math.min(1e9, Math.ceil((1 + more) * delayFrames + ringing));
  }

  /**
   * Returns how long the repeats of a sound of this frequency take to fall by 60 dB.
   *
   * @param hertz the frequency [Hz], ≥ 0 and below half the rate
   * @return the time [s]; that of one repeat if there is only one
   */
  public double secondsAt(double hertz) {
    double dampedDb = filter().map(low -> low.decibelsAt(hertz)).orElse(0.0);
    double fallDb = -20 * Math.log10(feedbackShare) - dampedDb;
    return delayFrames / rate.hertz() * Math.max(1, 60 / fallDb);
  }

  /**
   * Returns the energy of each repeat of a click, as long as one has at least so much in one of the
   * bands.
   *
   * @param bands the bands in which it is asked for
   * @param leastShare the least energy as a multiple of what the click has in the band, above 0
   * @return the energies as such multiples, [repeat][band]; at least the first repeat
   */
  public double[][] repeatEnergies(List<EnergyBand> bands, double leastShare) {
    Optional<FilterCascade> damped = filter();
    double[][] passed = new double[bands.size()][];
    double[][] shares = new double[bands.size()][];
    for (int b = 0; b < passed.length; b++) {
      passed[b] =
          Arrays.stream(bands.get(b).places())
              .map(hertz -> Math.pow(10, damped.map(low -> low.decibelsAt(hertz)).orElse(0.0) / 10))
              .toArray();
      shares[b] = bands.get(b).shares();
    }
    List<double[]> repeats = new ArrayList<>();
    double loudest = Double.POSITIVE_INFINITY;
    while (loudest >= leastShare) {
      double[] energies = new double[passed.length];
      loudest = 0;
      for (int b = 0; b < energies.length; b++) {
        for (int p = 0; p < passed[b].length; p++) {
          shares[b][p] *= passed[b][p] * (repeats.isEmpty() ? 1 : feedbackShare * feedbackShare);
          energies[b] += shares[b][p];
        }
        loudest = Math.max(loudest, energies[b]);
      }
      if (repeats.isEmpty() || loudest >= leastShare) {
        repeats.add(energies);
      }
    }
    return repeats.toArray(double[][]::new);
  }

  @Override
  public Processor newProcessor(Wiring wiring) {
    return new Running(this, wiring.channelCount());
  }

  private Optional<FilterCascade> filter() {
    return damping.map(
        cutoff ->
            Curve.BILINEAR.design(PassPrototypes.lowPass(PassFamily.BUTTERWORTH, 1, cutoff), rate));
  }

  private static final class Running implements Processor {

    private final double feedback;
    private final double[][] rings;
    private final Optional<CascadeFilter> damping;

    /** What comes back, [channel][frame], not longer than the delay. */
    private final double[][] back;

    private int position;

    Running(EchoDesign design, int channelCount) {
      feedback = design.feedbackShare();
      rings = new double[channelCount][design.delayFrames()];
      damping = design.filter().map(cascade -> new CascadeFilter(cascade, channelCount));
      back = new double[channelCount][Math.min(LONGEST_PIECE, design.delayFrames())];
    }

    @Override
    public void process(double[][] channels, int from, int to) {
      int start = from;
      while (start < to) {
        int delay = rings[0].length;
        int count = Math.min(Math.min(back[0].length, to - start), delay - position);
        processPiece(channels, start, count);
        position = (position + count) % delay;
        start += count;
      }
    }

    private void processPiece(double[][] channels, int start, int count) {
      for (int c = 0; c < rings.length; c++) {
        System.arraycopy(rings[c], position, back[c], 0, count);
      }
      if (damping.isPresent()) {
        damping.get().process(back, 0, count);
      }
      for (int c = 0; c < rings.length; c++) {
        double[] ring = rings[c];
        double[] channel = channels[c];
        double[] returned = back[c];
        for (int i = 0; i < count; i++) {
          double entering = channel[start + i] + feedback * returned[i];
          ring[position + i] = Math.abs(entering) < NOTHING ? 0 : entering;
          channel[start + i] = returned[i];
        }
      }
    }

    @Override
    public void reset() {
      for (double[] ring : rings) {
        Arrays.fill(ring, 0);
      }
      damping.ifPresent(CascadeFilter::reset);
      position = 0;
    }
  }
}
