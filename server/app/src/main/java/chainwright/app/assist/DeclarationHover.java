package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.app.view.ResponseWords;
import chainwright.app.view.StructurePlots;
import chainwright.dsp.filter.ConstantFactor;
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseProduct;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.sound.SoundBuilder;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.NumberText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Says what a declaration of a chain or a bus comes to.
 *
 * @param ground what the hover stands on
 * @param track the chain or bus
 * @param path its path
 */
record DeclarationHover(HoverGround ground, Definition.Track track, SignalPath path) {

  /** The programme loudness [LUFS]. Source: EBU R 128 (second-hand). */
  private static final double R128_LUFS = -23;

  /**
   * Tells of a declaration.
   *
   * @param word its first word
   * @param span its line
   * @return what to show; empty if nothing is known beyond what the word means
   */
  Optional<HoverText> of(String word, TextSpan span) {
    HoverPage page = ground.page();
    boolean isTold =
        switch (word) {
          case "source" -> new SourceHover(ground).declared(page, track, path);
          case "spill" -> new SourceHover(ground).spill(page, track, path, span);
          case "to" -> route(page, span);
          case "send" -> send(page, span);
          case "take" -> take(page);
          case "listen" -> listen(page, span);
          case "lowest-note" -> lowestNote(page);
          case "group" -> group(page);
          case "max-true-peak" -> maxTruePeak(page);
          case "loudness" -> loudness(page);
          default -> false;
        };
    return isTold ? Optional.of(page.over(span)) : Optional.empty();
  }

  private boolean route(HoverPage page, TextSpan span) {
    Optional<Declarations.Route> found =
        track.declarations().routes().stream()
            .filter(route -> route.span().equals(span))
            .findFirst();
    found.ifPresent(
        route -> {
          double faderDb = route.fader().baseValue();
          page.say(
              HoverPage.answer(
                  "to " + route.bus().text(),
                  "arrives at " + Readings.gain(faderDb) + onward(route.bus().text(), faderDb)));
          after(page, route.bus().text(), faderDb);
          others(page, route.bus().text());
        });
    return found.isPresent();
  }

  private boolean send(HoverPage page, TextSpan span) {
    Optional<Declarations.Send> found =
        track.declarations().sends().stream().filter(send -> send.span().equals(span)).findFirst();
    found.ifPresent(
        send -> {
          double levelDb = Routing.sendDb(track, send);
          page.say(
              HoverPage.answer(
                  "send to " + send.bus().text(),
                  "arrives at "
                      + Readings.gain(levelDb)
                      + (send.isPreFader()
                          ? ", whatever the fader does"
                          : ", the fader's "
                              + Readings.gain(levelDb - send.level().baseValue())
                              + " included")
                      + onward(send.bus().text(), levelDb)));
          after(page, send.bus().text(), levelDb);
          others(page, send.bus().text());
        });
    return found.isPresent();
  }

  private String onward(String bus, double levelDb) {
    List<Definition.Track> buses = new Routing(ground.scope()).onFrom(bus);
    if (buses.isEmpty()) {
      return "; there is no bus of this name";
    }
    double end = levelDb + Routing.fadersDb(buses);
    return buses.size() < 2
        ? ""
        : ", at "
            + Readings.gain(end)
            + " in `"
            + buses.get(buses.size() - 1).name().text()
            + "`, faders alone";
  }

  /** The chain, and the chain with all that comes after it. */
  private void after(HoverPage page, String bus, double levelDb) {
    Routing routing = new Routing(ground.scope());
    List<Definition.Track> buses = routing.onFrom(bus);
    if (buses.isEmpty()) {
      return;
    }
    List<Response> all = new ArrayList<>();
    all.add(path.response());
    all.add(new ConstantFactor(Math.pow(10, (levelDb + Routing.fadersDb(buses)) / 20)));
    buses.forEach(one -> all.add(ground.path(one).response()));
    page.plot(
        plots()
            .against(
                "With the buses behind it",
                "at the end",
                new ResponseProduct(all),
                track.name().text(),
                path.response()));
    page.say(
        "Latency to the end: "
            + StructureHover.latency(routing.latencySeconds(path, buses, ground), path.rate())
            + ".");
  }

  private void others(HoverPage page, String bus) {
    List<List<String>> rows = new ArrayList<>();
    for (Routing.Inflow inflow : new Routing(ground.scope()).into(bus)) {
      if (!inflow.from().name().equals(track.name())) {
        rows.add(List.of(ground.titled(inflow.from()), Readings.gain(inflow.levelDb())));
      }
    }
    page.table(List.of("also in `" + bus + "`", "level"), rows);
  }

  private boolean take(HoverPage page) {
    Optional<Declarations.Take> found = track.declarations().take();
    found.ifPresent(
        take -> {
          String file = HoverPage.plain(take.file());
          if (take.from().isEmpty() || take.to().isEmpty()) {
            page.say(HoverPage.answer("take " + file, "the whole recording"));
            return;
          }
          double from = take.from().get().seconds();
          double seconds = take.to().get().seconds() - from;
          page.say(
              HoverPage.answer(
                  "take " + file,
                  Readings.time(Math.max(0, seconds))
                      + " from "
                      + Readings.clock(from)
                      + " to "
                      + Readings.clock(take.to().get().seconds())
                      + ", "
                      + NumberText.format(seconds * path.rate().hertz(), 0)
                      + " samples at "
                      + path.rate()));
          Passages.beats(ground.scope(), seconds).ifPresent(page::say);
          List<List<String>> rows = new ArrayList<>();
          for (Declarations.Listen listen : track.declarations().listens()) {
            double at = listen.from().seconds();
            rows.add(
                List.of(
                    Readings.clock(at),
                    at < from || at > from + seconds
                        ? "outside the passage"
                        : Readings.time(at - from) + " in",
                    HoverPage.plain(listen.cue())));
          }
          page.table(List.of("listen at", "where it is", "for what"), rows);
        });
    return found.isPresent();
  }

  private boolean listen(HoverPage page, TextSpan span) {
    Optional<Declarations.Listen> found =
        track.declarations().listens().stream()
            .filter(listen -> listen.span().equals(span))
            .findFirst();
    found.ifPresent(
        listen -> {
          double from = listen.from().seconds();
          double to = listen.to().map(end -> end.seconds()).orElse(from);
          page.say(
              HoverPage.answer(
                  "listen",
                  Readings.clock(from)
                      + (to > from
                          ? " to " + Readings.clock(to) + ", " + Readings.time(to - from)
                          : "")
                      + (listen.cue().isEmpty() ? "" : ": " + HoverPage.plain(listen.cue()))));
          if (to > from) {
            Passages.beats(ground.scope(), to - from).ifPresent(page::say);
          }
          track
              .declarations()
              .take()
              .flatMap(take -> Passages.inTake(take, from, to))
              .ifPresent(page::say);
          List<List<String>> rows = Acting.between(path, from, to);
          page.table(List.of("acts then", "when", "what it does"), rows);
          if (rows.isEmpty()) {
            page.say("No `during` and no `ride` acts then; only the stages that always do.");
          }
        });
    return found.isPresent();
  }

  private boolean lowestNote(HoverPage page) {
    Optional<Declarations.LowestNote> found = track.declarations().lowestNote();
    found.ifPresent(
        lowest -> {
          double hertz = lowest.frequency().hertz();
          page.say(
              HoverPage.answer(
                  "lowest-note " + lowest.text(),
                  Readings.pitch(hertz)
                      + ", one wave takes "
                      + Readings.time(1 / hertz)
                      + "; the chain gives it "
                      + Readings.gain(path.response().decibelsAt(hertz))));
          page.plot(
              plots()
                  .single(
                      "The chain around the lowest note", track.name().text(), path.response()));
          path.source()
              .ifPresent(
                  kind ->
                      kind.lowestHz()
                          .ifPresent(
                              usual ->
                                  page.say(
                                      "Usual for "
                                          + kind.inWords()
                                          + ": "
                                          + Readings.pitch(usual)
                                          + ".")));
        });
    return found.isPresent();
  }

  private boolean group(HoverPage page) {
    Optional<String> name = track.declarations().group().map(group -> group.text());
    name.ifPresent(
        group -> {
          List<List<String>> rows = new ArrayList<>();
          double earliest = Double.POSITIVE_INFINITY;
          double latest = 0;
          for (Definition.Track other : ground.scope().tracks()) {
            if (other.declarations().group().filter(one -> one.text().equals(group)).isPresent()) {
              double seconds = SoundBuilder.latencySeconds(ground.path(other));
              earliest = Math.min(earliest, seconds);
              latest = Math.max(latest, seconds);
              rows.add(
                  List.of(
                      ground.titled(other),
                      Readings.time(seconds),
                      ResponseWords.of(ground.path(other).response(), path.rate())));
            }
          }
          page.say(
              HoverPage.answer(
                  "group " + group,
                  rows.size()
                      + (rows.size() == 1 ? " microphone" : " microphones of one sound")
                      + ", their latencies "
                      + (latest > earliest
                          ? Readings.time(latest - earliest) + " apart"
                          : "alike")));
          page.table(List.of("microphone", "latency", "response"), rows);
        });
    return name.isPresent();
  }

  private boolean maxTruePeak(HoverPage page) {
    Optional<Declarations.Target> target = track.declarations().maxTruePeak();
    target.ifPresent(
        peak -> {
          double ceiling = peak.level().decibels();
          page.say(
              HoverPage.answer(
                  "max-true-peak " + peak.level(),
                  Readings.number(ceiling - ground.nominal().levelDbfs(), 1)
                      + " dB above the nominal "
                      + ground.nominal().level()
                      + "; checked at the end, changes nothing"));
          Optional<StageElement> last =
              path.stages().stream()
                  .filter(stage -> stage.word().equals("true-peak-limiter"))
                  .reduce((first, second) -> second);
          page.say(
              last.flatMap(stage -> stage.context().settings().value("ceiling"))
                  .map(value -> "The `true-peak-limiter` of this chain holds " + value + ".")
                  .orElse("No `true-peak-limiter` in this chain holds it."));
        });
    return target.isPresent();
  }

  private static String against(double differenceLu) {
    String size = NumberText.format(Math.abs(differenceLu), 1);
    return size.equals("0")
        ? "exactly"
        : size + " LU " + (differenceLu > 0 ? "louder than" : "softer than");
  }

  private boolean loudness(HoverPage page) {
    Optional<Declarations.Target> target = track.declarations().loudness();
    target.ifPresent(
        loudness ->
            page.say(
                HoverPage.answer(
                    "loudness " + loudness.level(),
                    against(loudness.level().decibels() - R128_LUFS)
                        + " the −23 LUFS of EBU R 128; checked at the end, changes nothing")));
    return target.isPresent();
  }

  private StructurePlots plots() {
    return new StructurePlots(path.source(), path.rate());
  }
}
