package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.app.view.ResponseWords;
import chainwright.app.view.StructurePlots;
import chainwright.dsp.dynamics.StaticCurve;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.stage.StageSound;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.Zone;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Says what is known of a kind of source, and what a chain does to it.
 *
 * @param ground what the hover stands on
 */
record SourceHover(HoverGround ground) {

  /** Tells of a kind of source by itself. */
  HoverText of(SourceKind kind, TextSpan span) {
    HoverPage page = ground.page();
    page.say(known(kind));
    zones(page, kind, Optional.empty());
    return page.over(span);
  }

  boolean declared(HoverPage page, Definition.Track track, SignalPath path) {
    Optional<SourceKind> declared = track.declarations().sourceKind();
    declared.ifPresent(
        kind -> {
          page.say(known(kind));
          page.plot(
              new StructurePlots(Optional.of(kind), path.rate())
                  .single(
                      "What the chain does to its source", track.name().text(), path.response()));
          zones(page, kind, Optional.of(path));
        });
    return declared.isPresent();
  }

  boolean spill(HoverPage page, Definition.Track track, SignalPath path, TextSpan span) {
    List<Declarations.Spill> spills =
        track.declarations().spills().stream().filter(spill -> spill.span().equals(span)).toList();
    if (spills.isEmpty()) {
      return false;
    }
    double raisedDb = reductionDb(path);
    for (Declarations.Spill spill : spills) {
      Optional<SourceKind> kind = kindOf(spill.what().text());
      page.say(
          HoverPage.answer(
              "spill of " + spill.what().text(),
              spill
                      .level()
                      .map(level -> Readings.gain(level.baseValue()) + " against the wanted sound")
                      .orElse("its level is not said")
                  + (raisedDb >= 0.05
                      ? ", up to "
                          + Readings.number(raisedDb, 1)
                          + " dB nearer to it while the dynamics work"
                      : "")));
      kind.ifPresent(
          known -> {
            page.plot(
                new StructurePlots(kind, path.rate())
                    .single(
                        "What the chain does to the spill", track.name().text(), path.response()));
            page.say(HoverPage.plain(known.spill()));
            zones(page, known, Optional.of(path));
          });
    }
    if (raisedDb >= 0.05) {
      page.say(
          "A compressor takes so much from the wanted sound at "
              + ground.nominal().level()
              + ", and nothing from the spill in its pauses.");
    }
    return true;
  }

  /** What the stages that turn down the whole sound take from a tone at the nominal level. */
  private double reductionDb(SignalPath path) {
    double level = ground.nominal().levelDbfs();
    double start = level;
    for (StageElement stage : path.stages()) {
      Optional<StaticCurve> curve = stage.sound().flatMap(StageSound::curve);
      boolean hearsAll = stage.sound().flatMap(StageSound::detection).isEmpty();
      boolean turnsDown = stage.sound().flatMap(StageSound::compressor).isPresent();
      if (curve.isPresent() && hearsAll && turnsDown && !stage.isPartial()) {
        level -= curve.get().gainReductionDb(level);
      }
    }
    return start - level;
  }

  private Optional<SourceKind> kindOf(String word) {
    return ground
        .scope()
        .track(word)
        .flatMap(other -> other.declarations().sourceKind())
        .or(() -> ground.catalogue().source(word));
  }

  private static String known(SourceKind kind) {
    StringBuilder text = new StringBuilder();
    text.append(HoverPage.answer(kind.word(), kind.title()));
    kind.lowestHz()
        .ifPresent(hertz -> text.append(", lowest note usually ").append(Readings.pitch(hertz)));
    return text + "\n\n" + kind.note();
  }

  private static void zones(HoverPage page, SourceKind kind, Optional<SignalPath> path) {
    List<List<String>> rows = new ArrayList<>();
    for (Zone zone : kind.zones()) {
      List<String> row = new ArrayList<>();
      row.add(zone.name());
      row.add(Readings.band(zone.lowHz(), zone.highHz()));
      path.ifPresent(
          own ->
              row.add(
                  Readings.gain(
                      ResponseWords.meanDb(
                          own.response(),
                          zone.lowHz(),
                          Math.min(zone.highHz(), own.rate().nyquist().hertz() * 0.999)))));
      rows.add(row);
    }
    page.table(
        path.isPresent()
            ? List.of("zone", "where", "the chain's mean gain there")
            : List.of("zone", "where"),
        rows);
  }
}
