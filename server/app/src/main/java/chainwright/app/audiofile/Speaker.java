package chainwright.app.audiofile;

import java.util.ArrayList;
import java.util.List;

/**
 * The loudspeaker that a channel is meant for.
 *
 * <p>Source: Microsoft, "Multiple Channel Audio Data and WAVE Files", {@code dwChannelMask}: the
 * order here is that of the mask's bits, and channels stand in this order in a WAV file.
 */
public enum Speaker {
  /** Front left. */
  FRONT_LEFT,
  /** Front right. */
  FRONT_RIGHT,
  /** Front centre; also the one channel of a mono file. */
  FRONT_CENTRE,
  /** Low-frequency effects. */
  LOW_FREQUENCY,
  /** Back left. */
  BACK_LEFT,
  /** Back right. */
  BACK_RIGHT,
  /** Between front left and centre. */
  FRONT_LEFT_OF_CENTRE,
  /** Between front right and centre. */
  FRONT_RIGHT_OF_CENTRE,
  /** Back centre. */
  BACK_CENTRE,
  /** Side left. */
  SIDE_LEFT,
  /** Side right. */
  SIDE_RIGHT,
  /** Overhead. */
  TOP_CENTRE,
  /** Front left, high. */
  TOP_FRONT_LEFT,
  /** Front centre, high. */
  TOP_FRONT_CENTRE,
  /** Front right, high. */
  TOP_FRONT_RIGHT,
  /** Back left, high. */
  TOP_BACK_LEFT,
  /** Back centre, high. */
  TOP_BACK_CENTRE,
  /** Back right, high. */
  TOP_BACK_RIGHT;

  /**
   * Returns what is meant where a file does not say.
   *
   * @param channels how many channels, at least 1
   * @return the centre for one, left and right for two, an empty list for more
   */
  public static List<Speaker> usual(int channels) {
    return switch (channels) {
      case 1 -> List.of(FRONT_CENTRE);
      case 2 -> List.of(FRONT_LEFT, FRONT_RIGHT);
      default -> List.of();
    };
  }

  /**
   * The speakers of a mask, lowest bit first; fewer than the mask's bits if it has unknown ones.
   */
  static List<Speaker> ofMask(int mask) {
    List<Speaker> speakers = new ArrayList<>();
    Speaker[] all = values();
    for (int bit = 0; bit < all.length; bit++) {
      if ((mask & 1 << bit) != 0) {
        speakers.add(all[bit]);
      }
    }
    return List.copyOf(speakers);
  }

  /** The mask of speakers that stand in the order of the mask, and 0 for others. */
  static int maskOf(List<Speaker> speakers) {
    int mask = 0;
    for (Speaker speaker : speakers) {
      int bit = 1 << List.of(values()).indexOf(speaker);
      if (Integer.compareUnsigned(mask, bit) >= 0) {
        return 0;
      }
      mask |= bit;
    }
    return mask;
  }
}
