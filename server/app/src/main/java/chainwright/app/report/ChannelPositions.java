package chainwright.app.report;

import chainwright.app.audiofile.AudioFormat;
import chainwright.app.audiofile.Speaker;
import chainwright.dsp.loudness.ChannelPosition;
import java.util.List;
import java.util.Locale;

/** Where the channels of a file belong, for loudness. */
final class ChannelPositions {

  private ChannelPositions() {}

  /** Returns a position a channel; the usual ones where the file does not say. */
  static List<ChannelPosition> of(AudioFormat format) {
    List<Speaker> speakers = format.speakers();
    if (speakers.isEmpty()) {
      return ChannelPosition.usual(format.channels());
    }
    // The surrounds of 5.1 are written as back ones by many; only beside side ones are they back.
    boolean hasSides =
        speakers.contains(Speaker.SIDE_LEFT) || speakers.contains(Speaker.SIDE_RIGHT);
    return speakers.stream().map(speaker -> of(speaker, hasSides)).toList();
  }

  private static ChannelPosition of(Speaker speaker, boolean hasSides) {
    return switch (speaker) {
      case FRONT_LEFT -> ChannelPosition.LEFT;
      case FRONT_RIGHT -> ChannelPosition.RIGHT;
      case FRONT_CENTRE -> ChannelPosition.CENTRE;
      case LOW_FREQUENCY -> ChannelPosition.LOW_FREQUENCY;
      case BACK_LEFT -> hasSides ? ChannelPosition.LEFT_BACK : ChannelPosition.LEFT_SURROUND;
      case BACK_RIGHT -> hasSides ? ChannelPosition.RIGHT_BACK : ChannelPosition.RIGHT_SURROUND;
      case FRONT_LEFT_OF_CENTRE -> ChannelPosition.LEFT_OF_CENTRE;
      case FRONT_RIGHT_OF_CENTRE -> ChannelPosition.RIGHT_OF_CENTRE;
      case BACK_CENTRE -> ChannelPosition.CENTRE_BACK;
      case SIDE_LEFT -> ChannelPosition.LEFT_SURROUND;
      case SIDE_RIGHT -> ChannelPosition.RIGHT_SURROUND;
      case TOP_CENTRE,
          TOP_FRONT_LEFT,
          TOP_FRONT_CENTRE,
          TOP_FRONT_RIGHT,
          TOP_BACK_LEFT,
          TOP_BACK_CENTRE,
          TOP_BACK_RIGHT ->
          ChannelPosition.HEIGHT;
    };
  }

  /** Returns a position in words, such as {@code left surround}. */
  static String word(ChannelPosition position) {
    return position.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
