package chainwright.engine.mix;

import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import java.util.Optional;

/**
 * What a chain or bus gives to a bus.
 *
 * @param from the index of the node that it comes from
 * @param factor the gain on the way, fader and sends together, no unit
 * @param delayFrames how long it waits, so that all that comes to the bus is equally late [frames]
 */
public record MixFeed(int from, double factor, int delayFrames) {

  /**
   * Returns the gain from a chain or bus to a bus. A route goes through its own fader. A send that
   * is taken behind the fader is behind that of the first route.
   *
   * @param track the chain or bus
   * @param bus the name of the bus
   * @return the sum of all ways there as a factor; empty if there is none
   */
  static Optional<Double> factor(Definition.Track track, String bus) {
    if (!MixOrder.feeds(track, bus)) {
      return Optional.empty();
    }
    Declarations declared = track.declarations();
    double faderDb =
        declared.routes().stream().findFirst().map(route -> route.fader().baseValue()).orElse(0.0);
    double sum = 0;
    for (Declarations.Route route : declared.routes()) {
      sum += route.bus().text().equals(bus) ? factor(route.fader().baseValue()) : 0;
    }
    for (Declarations.Send send : declared.sends()) {
      double gainDb = send.level().baseValue() + (send.isPreFader() ? 0 : faderDb);
      sum += send.bus().text().equals(bus) ? factor(gainDb) : 0;
    }
    return Optional.of(sum);
  }

  private static double factor(double gainDb) {
    return Math.pow(10, gainDb / 20);
  }
}
