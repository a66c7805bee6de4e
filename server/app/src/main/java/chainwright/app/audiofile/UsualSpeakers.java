package chainwright.app.audiofile;

import static chainwright.app.audiofile.Speaker.BACK_CENTRE;
import static chainwright.app.audiofile.Speaker.BACK_LEFT;
import static chainwright.app.audiofile.Speaker.BACK_RIGHT;
import static chainwright.app.audiofile.Speaker.FRONT_CENTRE;
import static chainwright.app.audiofile.Speaker.FRONT_LEFT;
import static chainwright.app.audiofile.Speaker.FRONT_RIGHT;
import static chainwright.app.audiofile.Speaker.LOW_FREQUENCY;
import static chainwright.app.audiofile.Speaker.SIDE_LEFT;
import static chainwright.app.audiofile.Speaker.SIDE_RIGHT;

import java.util.List;

/** The speakers of a file that does not name them. Source: RFC 9639, section 9.1.3. */
final class UsualSpeakers {

  private UsualSpeakers() {}

  static List<Speaker> of(int channels) {
    return switch (channels) {
      case 1, 2 -> Speaker.usual(channels);
      case 3 -> List.of(FRONT_LEFT, FRONT_RIGHT, FRONT_CENTRE);
      case 4 -> List.of(FRONT_LEFT, FRONT_RIGHT, BACK_LEFT, BACK_RIGHT);
      case 5 -> List.of(FRONT_LEFT, FRONT_RIGHT, FRONT_CENTRE, BACK_LEFT, BACK_RIGHT);
      case 6 ->
          List.of(FRONT_LEFT, FRONT_RIGHT, FRONT_CENTRE, LOW_FREQUENCY, BACK_LEFT, BACK_RIGHT);
      case 7 ->
          List.of(
              FRONT_LEFT,
              FRONT_RIGHT,
              FRONT_CENTRE,
              LOW_FREQUENCY,
              BACK_CENTRE,
              SIDE_LEFT,
              SIDE_RIGHT);
      default ->
          List.of(
              FRONT_LEFT,
              FRONT_RIGHT,
              FRONT_CENTRE,
              LOW_FREQUENCY,
              BACK_LEFT,
              BACK_RIGHT,
              SIDE_LEFT,
              SIDE_RIGHT);
    };
  }
}
