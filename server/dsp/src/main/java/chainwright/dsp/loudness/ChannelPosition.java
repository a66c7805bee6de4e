package chainwright.dsp.loudness;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the loudspeaker of a channel stands, which decides how much the channel counts for
 * loudness.
 *
 * <p>Source: ITU-R BS.1770-5, Annex 1 table 3 (five channels) and Annex 3 table 4 (any position);
 * the angles of the usual loudspeakers are those of ITU-R BS.2051, from memory.
 */
public enum ChannelPosition {
  /** Front left; also the left of two. */
  LEFT(30, 0),
  /** Front right; also the right of two. */
  RIGHT(-30, 0),
  /** Front centre; also the only channel of one. */
  CENTRE(0, 0),
  /** Low-frequency effects, which count for nothing. */
  LOW_FREQUENCY(Double.NaN, Double.NaN),
  /** Left surround of 5.1 and side left of 7.1. */
  LEFT_SURROUND(110, 0),
  /** Right surround of 5.1 and side right of 7.1. */
  RIGHT_SURROUND(-110, 0),
  /** Back left of 7.1. */
  LEFT_BACK(135, 0),
  /** Back right of 7.1. */
  RIGHT_BACK(-135, 0),
  /** Back centre. */
  CENTRE_BACK(180, 0),
  /** Between front left and centre. */
  LEFT_OF_CENTRE(15, 0),
  /** Between front right and centre. */
  RIGHT_OF_CENTRE(-15, 0),
  /** Any loudspeaker 30° or more above or below the ears. */
  HEIGHT(0, 45);

  private static final double FRONT = 1;
  private static final double SURROUND = 1.41;

  private final double weight;

  ChannelPosition(double azimuthDegrees, double elevationDegrees) {
    if (Double.isNaN(azimuthDegrees)) {
      weight = 0;
    } else {
      weight = weightAt(azimuthDegrees, elevationDegrees);
    }
  }

  /**
   * Returns how much a loudspeaker counts: 1.41 at the sides, 1 elsewhere.
   *
   * @param azimuthDegrees the horizontal angle from the front [°], from −180 to 180
   * @param elevationDegrees the vertical angle [°], from −90 to 90
   * @return the factor of the channel's mean square
   */
  public static double weightAt(double azimuthDegrees, double elevationDegrees) {
    double side = Math.abs(azimuthDegrees);
    return side >= 60 && side <= 120 && Math.abs(elevationDegrees) < 30 ? SURROUND : FRONT;
  }

  /**
   * Returns how much the channel counts for loudness.
   *
   * @return the factor of its mean square: 1, 1.41, or 0 for low-frequency effects
   */
  public double weight() {
    return weight;
  }

  /**
   * Returns the usual order of channels where a recording does not say its own: 5.1 is left, right,
   * centre, low-frequency effects, left surround, right surround.
   *
   * @param channelCount how many channels there are, at least 1
   * @return their positions; from the ninth on, those of the height
   * @throws IllegalArgumentException if there is no channel
   */
  public static List<ChannelPosition> usual(int channelCount) {
    if (channelCount < 1) {
      throw new IllegalArgumentException(
          "the number of channels must be at least 1, but was " + channelCount);
    }
    return switch (channelCount) {
      case 1 -> List.of(CENTRE);
      case 2 -> List.of(LEFT, RIGHT);
      case 3 -> List.of(LEFT, RIGHT, CENTRE);
      case 4 -> List.of(LEFT, RIGHT, LEFT_SURROUND, RIGHT_SURROUND);
      case 5 -> List.of(LEFT, RIGHT, CENTRE, LEFT_SURROUND, RIGHT_SURROUND);
      case 6 -> List.of(LEFT, RIGHT, CENTRE, LOW_FREQUENCY, LEFT_SURROUND, RIGHT_SURROUND);
      case 7 ->
          List.of(LEFT, RIGHT, CENTRE, LOW_FREQUENCY, CENTRE_BACK, LEFT_SURROUND, RIGHT_SURROUND);
      default -> sevenPointOneAndAbove(channelCount);
    };
  }

  private static List<ChannelPosition> sevenPointOneAndAbove(int channelCount) {
    List<ChannelPosition> bed =
        List.of(
            LEFT,
            RIGHT,
            CENTRE,
            LOW_FREQUENCY,
            LEFT_BACK,
            RIGHT_BACK,
            LEFT_SURROUND,
            RIGHT_SURROUND);
    List<ChannelPosition> all = new ArrayList<>(bed);
    while (all.size() < channelCount) {
      all.add(HEIGHT);
    }
    return List.copyOf(all);
  }
}
