package chainwright.app.assist;

import chainwright.engine.path.SignalPath;
import chainwright.engine.sound.SoundBuilder;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Follows the ways between chains and buses.
 *
 * @param scope what the names mean
 */
record Routing(Scope scope) {

  /**
   * Something that flows into a bus.
   *
   * @param from the chain or bus that it comes from
   * @param isSend whether it is a send, not the way of the sound itself
   * @param isPreFader whether it is taken before the fader
   * @param levelDb the level at which it comes in, the fader included where it counts [dB]
   */
  record Inflow(Definition.Track from, boolean isSend, boolean isPreFader, double levelDb) {}

  /**
   * Returns what flows into a bus.
   *
   * @param bus the bus's name
   * @return the flows, in the order of the text
   */
  List<Inflow> into(String bus) {
    List<Inflow> inflows = new ArrayList<>();
    for (Definition.Track track : scope.tracks()) {
      for (Declarations.Route route : track.declarations().routes()) {
        if (route.bus().text().equals(bus)) {
          inflows.add(new Inflow(track, false, false, route.fader().baseValue()));
        }
      }
      for (Declarations.Send send : track.declarations().sends()) {
        if (send.bus().text().equals(bus)) {
          inflows.add(new Inflow(track, true, send.isPreFader(), sendDb(track, send)));
        }
      }
    }
    return inflows;
  }

  /** Returns the level of a send, with the fader of the first route where it is taken behind it. */
  static double sendDb(Definition.Track track, Declarations.Send send) {
    double faderDb =
        send.isPreFader()
            ? 0
            : track.declarations().routes().stream()
                .findFirst()
                .map(route -> route.fader().baseValue())
                .orElse(0.0);
    return send.level().baseValue() + faderDb;
  }

  /**
   * Returns the buses from one to the end, by the first route of each.
   *
   * @param bus the name of the first
   * @return the buses that are known, a circle followed once
   */
  List<Definition.Track> onFrom(String bus) {
    List<Definition.Track> buses = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    Optional<Definition.Track> next = scope.bus(bus);
    while (next.isPresent() && seen.add(next.get().name().text())) {
      buses.add(next.get());
      next =
          next.get().declarations().routes().stream()
              .findFirst()
              .flatMap(route -> scope.bus(route.bus().text()));
    }
    return buses;
  }

  /** Returns the sum of the faders behind a row of buses [dB]. */
  static double fadersDb(List<Definition.Track> buses) {
    double sum = 0;
    for (Definition.Track bus : buses) {
      sum +=
          bus.declarations().routes().stream()
              .findFirst()
              .map(route -> route.fader().baseValue())
              .orElse(0.0);
    }
    return sum;
  }

  /** Returns the latency of a path and of the buses behind it [s]. */
  double latencySeconds(SignalPath path, List<Definition.Track> buses, HoverGround ground) {
    double sum = SoundBuilder.latencySeconds(path);
    for (Definition.Track bus : buses) {
      sum += SoundBuilder.latencySeconds(ground.path(bus));
    }
    return sum;
  }
}
