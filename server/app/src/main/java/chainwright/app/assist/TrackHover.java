package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.app.view.ResponseWords;
import chainwright.app.view.StagePlots;
import chainwright.app.view.Unfinished;
import chainwright.engine.path.SignalPath;
import chainwright.engine.sound.SoundBuilder;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;

/**
 * Says what a chain or a bus does as a whole, what flows into it and where it goes.
 *
 * @param ground what the hover stands on
 */
record TrackHover(HoverGround ground) {

  HoverText of(Definition.Track track, SignalPath path, TextSpan span) {
    HoverPage page = ground.page();
    int stages = path.stages().size();
    page.say(
        "**"
            + track.name().text()
            + "** "
            + HoverPage.plain(track.title())
            + ": "
            + stages
            + (stages == 1 ? " stage, " : " stages, ")
            + ResponseWords.of(path.response(), path.rate())
            + ", latency "
            + StructureHover.latency(SoundBuilder.latencySeconds(path), path.rate()));
    page.plot(StagePlots.chain(heading(track), path));
    List<Routing.Inflow> inflows = new Routing(ground.scope()).into(track.name().text());
    inflow(page, inflows);
    page.table(StageTables.HEAD, StageTables.rows(path.elements(), ground));
    Unfinished.leftOut(path.elements()).ifPresent(page::say);
    page.say(ways(track));
    page.notes(track.clauses().notes());
    return page.over(span);
  }

  private static String heading(Definition.Track track) {
    return track.title().isEmpty() ? track.name().text() : track.title();
  }

  private void inflow(HoverPage page, List<Routing.Inflow> inflows) {
    List<List<String>> rows = new ArrayList<>();
    double earliest = Double.POSITIVE_INFINITY;
    double latest = 0;
    for (Routing.Inflow inflow : inflows) {
      double seconds = SoundBuilder.latencySeconds(ground.path(inflow.from()));
      earliest = inflow.isSend() ? earliest : Math.min(earliest, seconds);
      latest = inflow.isSend() ? latest : Math.max(latest, seconds);
      rows.add(
          List.of(
              ground.titled(inflow.from()),
              !inflow.isSend()
                  ? "fader"
                  : inflow.isPreFader() ? "send, pre-fader" : "send, post-fader",
              Readings.gain(inflow.levelDb()),
              seconds > 0 ? Readings.time(seconds) : ""));
    }
    page.table(List.of("what comes in", "by", "level", "latency"), rows);
    if (latest > earliest) {
      page.say(
          "Their latencies differ by "
              + Readings.time(latest - earliest)
              + "; the earlier ones are delayed to meet the latest.");
    }
  }

  private String ways(Definition.Track track) {
    List<String> ways = new ArrayList<>();
    for (Declarations.Route route : track.declarations().routes()) {
      ways.add("to `" + route.bus().text() + "` at " + Readings.gain(route.fader().baseValue()));
    }
    for (Declarations.Send send : track.declarations().sends()) {
      ways.add(
          "a send to `"
              + send.bus().text()
              + "` at "
              + Readings.gain(Routing.sendDb(track, send))
              + (send.isPreFader() ? ", pre-fader" : ", fader included"));
    }
    return ways.isEmpty() ? "" : "It goes " + String.join("; ", ways) + ".";
  }
}
