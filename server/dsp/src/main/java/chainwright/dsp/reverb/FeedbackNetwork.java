package chainwright.dsp.reverb;

import java.util.Arrays;
import java.util.List;

/**
 * The late sound of a room: sixteen delay lines that feed one another through a matrix that keeps
 * energy, and lose it only by what their {@link AbsorbentFilter} takes.
 *
 * <p>The matrix is a Hadamard matrix after rotations of neighbouring lines by slowly swaying
 * angles. It is orthogonal at every moment, so the network loses energy with any delays and never
 * gains any; the sway keeps single frequencies from standing out. Each channel enters and leaves
 * with signs of its own, which have nothing in common with those of the others, up to sixteen
 * channels; more share them.
 *
 * <p>Source: J.-M. Jot and A. Chaigne, AES preprint 3030, 1991, the network; S. J. Schlecht and E.
 * A. P. Habets, "On Lossless Feedback Delay Networks", IEEE Trans. Signal Processing 65(6), 2017,
 * orthogonal matrices; the same, "Time-Varying Feedback Matrices in Feedback Delay Networks and
 * Their Application in Artificial Reverberation", JASA 138(3), 2015, slow rotations; all from
 * memory.
 */
final class FeedbackNetwork {

  /** The number of lines. */
  static final int LINES = 16;

  /** How far a decay is followed [dB]. */
  private static final double TAIL_DB = 90;

  /** The longest piece that is worked on at once [frames]. */
  private static final int LONGEST_PIECE = 256;

  /** How often the angles are computed [frames]; between, sine and cosine go straight. */
  private static final int SWAY_FRAMES = 64;

  /** How far the angles sway to either side [rad]; ours. */
  private static final double SWAY_RADIANS = 0.1;

  /** What makes the Hadamard matrix orthogonal. */
  private static final double SCALE = 1 / Math.sqrt(LINES);

  /**
   * How many lines further each row of the matrix feeds, so that its eigenvalues are spread over
   * the circle and no frequency is favoured.
   */
  private static final int SHIFT = 5;

  private final double[][] lines;
  private final int[] positions;
  private final AbsorbentFilter[] filters;
  private final Sway[] sways;
  private final double inFactor;
  private final double outFactor;

  /** What leaves the lines, [line][frame]. */
  private final double[][] work;

  /**
   * Makes a network that holds silence.
   *
   * @param channelCount the number of channels
   * @param lengths the lines [frames], each ≥ 1
   * @param times how long a sound takes to fall by 60 dB
   * @param power the energy of the response of each channel to one impulse in each
   * @param sampleRateHz the sample rate [Hz]
   */
  FeedbackNetwork(
      int channelCount, int[] lengths, DecayTimes times, double power, double sampleRateHz) {
    lines = new double[LINES][];
    positions = new int[LINES];
    filters = new AbsorbentFilter[LINES];
    sways = new Sway[LINES / 2];
    work = new double[LINES][Math.min(LONGEST_PIECE, Arrays.stream(lengths).min().orElseThrow())];
    for (int k = 0; k < LINES; k++) {
      lines[k] = new double[lengths[k]];
      filters[k] = new AbsorbentFilter(times, lengths[k], sampleRateHz);
    }
    for (int pair = 0; pair < sways.length; pair++) {
      sways[pair] = new Sway(pair, sampleRateHz);
    }
    inFactor = SCALE / Math.sqrt(channelCount);
    outFactor = Math.sqrt(power / circulating(lengths, times, sampleRateHz));
  }

  /**
   * Returns the energy that leaves all lines together after a click of middle frequencies and
   * energy 1: what they keep at the first pass, and less each time after.
   */
  private static double circulating(int[] lengths, DecayTimes times, double sampleRateHz) {
    double kept = 0;
    for (int length : lengths) {
      kept += Math.pow(10, -6 * length / sampleRateHz / times.middleSeconds()) / LINES;
    }
    return kept / (1 - kept);
  }

  /** How the energy of a click leaves such a network. */
  static final class Energy {

    private final int[] lengths;
    private final List<AbsorbentFilter> filters;
    private final double factor;
    private final double sampleRateHz;

    /**
     * Makes the network's filters.
     *
     * @param lengths the lines [frames], each ≥ 1
     * @param times how long a sound takes to fall by 60 dB
     * @param power the energy of the response to middle frequencies
     * @param sampleRateHz the sample rate [Hz]
     */
    Energy(int[] lengths, DecayTimes times, double power, double sampleRateHz) {
      this.lengths = lengths;
      this.filters =
          Arrays.stream(lengths)
              .mapToObj(length -> new AbsorbentFilter(times, length, sampleRateHz))
              .toList();
      this.factor = power / circulating(lengths, times, sampleRateHz);
      this.sampleRateHz = sampleRateHz;
    }

    /** Returns what of its energy each line keeps at a frequency. */
    double[] kept(double hertz) {
      double cosine = Math.cos(2 * Math.PI * hertz / sampleRateHz);
      return filters.stream().mapToDouble(filter -> filter.power(cosine)).toArray();
    }

    /** Returns when the energy comes out that goes in. */
    double[] through(EnergyFlow flow, double[] energy, double[] kept) {
      double[] leaving = flow.throughLines(energy, lengths, kept);
      for (int i = 0; i < leaving.length; i++) {
        leaving[i] *= factor;
      }
      return leaving;
    }

    /** Returns the energy of all that comes out if the energy 1 goes in. */
    double whole(double[] kept) {
      double mean = Arrays.stream(kept).sum() / kept.length;
      return factor * mean / (1 - mean);
    }
  }

  /**
   * Returns how long it takes until what entered has fallen by 90 dB, at the frequency and along
   * the line that lose least.
   */
  static int tailFrames(int[] lengths, DecayTimes times, double sampleRateHz) {
    double longest = 0;
    for (int length : lengths) {
      AbsorbentFilter filter = new AbsorbentFilter(times, length, sampleRateHz);
      for (double hertz = 10; hertz < sampleRateHz / 2; hertz *= 1.1) {
        longest = Math.max(longest, -TAIL_DB * length / filter.gainDb(hertz, sampleRateHz));
      }
    }
    return (int) Math.ceil(longest) + Arrays.stream(lengths).max().orElse(0);
  }

  /** Returns the longest block that can be processed at once [frames]. */
  int pieceFrames() {
    return work[0].length;
  }

  /** Adds what comes back of a block, which is not longer than a piece, to another. */
  void process(double[][] in, double[][] out, int from, int count) {
    for (int k = 0; k < LINES; k++) {
      read(lines[k], positions[k], work[k], count);
      filters[k].process(work[k], count);
    }
    for (Sway sway : sways) {
      sway.turn(work, count);
    }
    mix(count);
    for (int c = 0; c < out.length; c++) {
      add(work[c % LINES], outFactor, out[c], from, count);
    }
    for (int k = 0; k < LINES; k++) {
      double[] row = work[k];
      for (int i = 0; i < count; i++) {
        row[i] *= SCALE;
      }
      for (int c = 0; c < in.length; c++) {
        add(in[c], sign(5 * c + 3, k) * inFactor, row, 0, count);
      }
    }
    for (int k = 0; k < LINES; k++) {
      int line = (k + SHIFT) % LINES;
      positions[line] = write(work[k], lines[line], positions[line], count);
    }
  }

  private static void add(double[] samples, double factor, double[] to, int from, int count) {
    for (int i = 0; i < count; i++) {
      to[from + i] += factor * samples[i];
    }
  }

  private static void read(double[] ring, int position, double[] into, int count) {
    int first = Math.min(count, ring.length - position);
    System.arraycopy(ring, position, into, 0, first);
    System.arraycopy(ring, 0, into, first, count - first);
  }

  private static int write(double[] samples, double[] ring, int position, int count) {
    int first = Math.min(count, ring.length - position);
    System.arraycopy(samples, 0, ring, position, first);
    System.arraycopy(samples, first, ring, 0, count - first);
    return (position + count) % ring.length;
  }

  /** The sign of a row and column of the Hadamard matrix of the order 16. */
  private static int sign(int row, int column) {
    return Integer.bitCount(row % LINES & column) % 2 == 0 ? 1 : -1;
  }

  /** Multiplies each frame by the Hadamard matrix of the order 16, not scaled, in four steps. */
  private void mix(int count) {
    for (int half = 1; half < LINES; half *= 2) {
      for (int k = 0; k < LINES; k++) {
        if ((k & half) == 0) {
          double[] one = work[k];
          double[] other = work[k + half];
          for (int i = 0; i < count; i++) {
            double sum = one[i] + other[i];
            other[i] = one[i] - other[i];
            one[i] = sum;
          }
        }
      }
    }
  }

  void reset() {
    for (double[] line : lines) {
      Arrays.fill(line, 0);
    }
    Arrays.fill(positions, 0);
    Arrays.stream(filters).forEach(AbsorbentFilter::reset);
    Arrays.stream(sways).forEach(Sway::reset);
  }

  /** The rotation of two neighbouring lines by an angle that sways. */
  private static final class Sway {

    private final int pair;
    private final double radiansPerFrame;
    private final double startRadians;
    private long frame;
    private double cosine;
    private double sine;
    private double nextCosine;
    private double nextSine;

    Sway(int pair, double sampleRateHz) {
      this.pair = pair;
      Scatter scatter = new Scatter(10 + pair);
      radiansPerFrame = 2 * Math.PI * (0.4 + 0.7 * scatter.next()) / sampleRateHz;
      startRadians = 2 * Math.PI * scatter.next();
      reset();
    }

    private double angle(long atFrame) {
      return SWAY_RADIANS * Math.sin(startRadians + radiansPerFrame * atFrame);
    }

    void turn(double[][] work, int count) {
      int done = 0;
      while (done < count) {
        int within = (int) (frame % SWAY_FRAMES);
        if (within == 0) {
          cosine = nextCosine;
          sine = nextSine;
          double angle = angle(frame + SWAY_FRAMES);
          nextCosine = Math.cos(angle);
          nextSine = Math.sin(angle);
        }
        int length = Math.min(SWAY_FRAMES - within, count - done);
        turn(work[2 * pair], work[2 * pair + 1], done, length, within);
        done += length;
        frame += length;
      }
    }

    /** A chord of the circle lies within it, so that what goes straight gains no energy either. */
    private void turn(double[] one, double[] other, int from, int length, int within) {
      double cosineStep = (nextCosine - cosine) / SWAY_FRAMES;
      double sineStep = (nextSine - sine) / SWAY_FRAMES;
      for (int i = 0; i < length; i++) {
        double c = cosine + (within + i) * cosineStep;
        double s = sine + (within + i) * sineStep;
        double x = one[from + i];
        double y = other[from + i];
        one[from + i] = c * x - s * y;
        other[from + i] = s * x + c * y;
      }
    }

    void reset() {
      frame = 0;
      nextCosine = Math.cos(angle(0));
      nextSine = Math.sin(angle(0));
    }
  }
}
