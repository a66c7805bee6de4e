package chainwright.engine.rules;

import chainwright.notation.model.Definition;
import chainwright.notation.model.Name;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;

/**
 * A way out of a chain or bus, be it a route or a send.
 *
 * @param bus where it leads
 * @param span the whole statement
 */
record Outlet(Name bus, TextSpan span) {

  /** Returns the ways out, routes first. */
  static List<Outlet> of(Definition.Track track) {
    List<Outlet> outlets = new ArrayList<>();
    track
        .declarations()
        .routes()
        .forEach(route -> outlets.add(new Outlet(route.bus(), route.span())));
    track.declarations().sends().forEach(send -> outlets.add(new Outlet(send.bus(), send.span())));
    return outlets;
  }
}
