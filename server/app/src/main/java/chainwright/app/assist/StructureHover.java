package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.app.view.ResponseWords;
import chainwright.app.view.StepWord;
import chainwright.app.view.StructurePlots;
import chainwright.app.view.Unfinished;
import chainwright.dsp.filter.ConstantFactor;
import chainwright.dsp.filter.MidSideResponse;
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseProduct;
import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Step;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.NumberText;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Says what a structure does as a whole, and what each way through it does.
 *
 * @param ground what the hover stands on
 * @param path the path that the structure is part of; empty in a preset
 * @param source the kind of source, if known
 */
record StructureHover(HoverGround ground, Optional<SignalPath> path, Optional<SourceKind> source) {

  private static final Response UNITY = new ConstantFactor(1);

  HoverText of(SplitElement split) {
    HoverPage page = ground.page();
    if (!split.unread().isEmpty()) {
      page.say(HoverPage.answer(StepWord.of(split.step()), Unfinished.inWords(split)));
      page.table(StageTables.HEAD, StageTables.rows(List.of(split), ground));
    } else if (split.step() instanceof Step.Insert insert) {
      new InsertHover(ground).tell(page, insert, split, plots(split));
    } else if (split.step() instanceof Step.During during) {
      during(page, during, split);
    } else if (split.step() instanceof Step.MidSide) {
      midSide(page, split);
    } else {
      sum(page, split);
    }
    if (split.unread().isEmpty()) {
      Unfinished.leftOut(List.of(split)).ifPresent(page::say);
    }
    if (split.isBypassed()) {
      page.say("It is bypassed: the sound passes unchanged.");
    }
    page.notes(split.step().clauses().notes());
    split.branches().stream()
        .filter(branch -> branch.branch().lineSpan().equals(split.step().lineSpan()))
        .forEach(branch -> page.notes(branch.branch().clauses().notes()));
    return page.over(split.place().span());
  }

  private void sum(HoverPage page, SplitElement split) {
    boolean isParallel = split.step() instanceof Step.Parallel;
    String word = StepWord.of(split.step());
    int count = split.branches().size();
    String what =
        isParallel
            ? count + (count == 1 ? " path" : " paths, added with their phases")
            : count + " bands, " + slope(split) + " dB/oct where they meet, added again";
    page.say(
        HoverPage.answer(word, what + ": " + ResponseWords.of(split.response(), split.rate())));
    page.plot(
        plots(split)
            .sum(isParallel ? "Parallel paths and their sum" : "Bands and their sum", split));
    double latest = ground.latencySeconds(List.of(split));
    List<List<String>> rows = new ArrayList<>();
    for (PathBranch branch : split.branches()) {
      List<String> row = new ArrayList<>();
      row.add(HoverPage.plain(StructurePlots.name(branch.branch(), split)));
      if (isParallel) {
        row.add(level(branch));
      }
      double own = ground.latencySeconds(branch.elements());
      row.add(latency(own, split.rate()));
      row.add(latest > own && !split.isBypassed() ? "+" + Readings.time(latest - own) : "");
      row.add(StageTables.inOneLine(branch.elements(), ground.nominal()));
      rows.add(row);
    }
    page.table(
        isParallel
            ? List.of("path", "level", "latency", "delayed by", "what it does")
            : List.of("band", "latency", "delayed by", "what it does"),
        rows);
    if (isDynamic(split)) {
      page.say("Drawn with all dynamics at rest.");
    }
    if (latest > 0) {
      page.say(
          "The whole is "
              + latency(latest, split.rate())
              + " late; the earlier ways are delayed to meet the latest.");
    }
    loudest(page, split, isParallel);
  }

  private static String level(PathBranch branch) {
    return branch.branch().clauses().bypassed().isPresent()
        ? "off"
        : Readings.gain(branch.branch().settings().number("gain").orElse(0.0));
  }

  private static boolean isDynamic(SplitElement split) {
    return split.branches().stream()
        .flatMap(branch -> branch.elements().stream())
        .anyMatch(
            element ->
                element instanceof StageElement stage
                    && stage.sound().filter(sound -> sound.curve().isPresent()).isPresent());
  }

  /** The sum against what the same paths would give if they were in phase. */
  private void loudest(HoverPage page, SplitElement split, boolean isParallel) {
    if (!isParallel || split.branches().size() < 2) {
      return;
    }
    double hertz = 0;
    double worst = 0;
    for (int i = 0; i < 240; i++) {
      double at = 20 * Math.pow(Math.min(1000, top(split) / 20), i / 239.0);
      double inStep = 0;
      for (PathBranch branch : split.branches()) {
        inStep += Math.pow(10, branch.response().decibelsAt(at) / 20);
      }
      double lost = 20 * Math.log10(inStep) - split.response().decibelsAt(at);
      if (lost > worst) {
        worst = lost;
        hertz = at;
      }
    }
    page.say(
        worst < 0.1
            ? "The paths are in phase at all frequencies: nothing cancels."
            : "The paths cancel most at "
                + Readings.frequency(hertz)
                + ": "
                + (Double.isInfinite(worst)
                    ? "everything"
                    : Readings.number(worst, 1) + " dB less than if they were in phase")
                + ".");
  }

  private void midSide(HoverPage page, SplitElement split) {
    Response mid = UNITY;
    Response side = UNITY;
    for (PathBranch branch : split.branches()) {
      if (branch.branch().word().equals("mid")) {
        mid = branch.response();
      } else {
        side = branch.response();
      }
    }
    MidSideResponse stereo = new MidSideResponse(mid, side);
    page.say(
        HoverPage.answer(
            "mid-side",
            "mid "
                + ResponseWords.of(mid, split.rate())
                + "; side "
                + ResponseWords.of(side, split.rate())));
    page.plot(plots(split).midSide("Middle and side", stereo));
    page.say(
        "A sound in one channel alone comes out of the other, too, where mid and side differ: "
            + ResponseWords.of(stereo.toOtherChannel(), split.rate())
            + ".");
    List<List<String>> rows = new ArrayList<>();
    for (PathBranch branch : split.branches()) {
      rows.add(
          List.of(
              branch.branch().word(),
              latency(ground.latencySeconds(branch.elements()), split.rate()),
              StageTables.inOneLine(branch.elements(), ground.nominal())));
    }
    page.table(List.of("part", "latency", "what it does"), rows);
  }

  private void during(HoverPage page, Step.During during, SplitElement split) {
    double seconds = during.to().seconds() - during.from().seconds();
    Response passage = split.branches().isEmpty() ? UNITY : split.branches().get(0).response();
    page.say(
        HoverPage.answer(
            "during",
            Readings.time(Math.max(0, seconds))
                + " from "
                + Readings.clock(during.from().seconds())
                + " to "
                + Readings.clock(during.to().seconds())
                + ": "
                + ResponseWords.of(passage, split.rate())));
    Response rest = path.map(SignalPath::response).orElse(UNITY);
    page.plot(
        plots(split)
            .against(
                "Inside and outside the passage",
                "inside",
                new ResponseProduct(List.of(rest, passage)),
                "outside",
                rest));
    Passages.beats(ground.scope(), seconds).ifPresent(page::say);
    path.map(SignalPath::track)
        .flatMap(track -> track.declarations().take())
        .flatMap(take -> Passages.inTake(take, during.from().seconds(), during.to().seconds()))
        .ifPresent(page::say);
    if (!split.branches().isEmpty()) {
      page.table(StageTables.HEAD, StageTables.rows(split.branches().get(0).elements(), ground));
    }
  }

  /** Tells of one way through a structure. */
  HoverText branch(PathBranch branch, SplitElement split) {
    String name = StructurePlots.name(branch.branch(), split);
    boolean isNamed = !name.equals(branch.branch().word());
    String word = branch.branch().word();
    HoverPage page = ground.page();
    if (!split.unread().isEmpty()) {
      page.say(HoverPage.answer(word, Unfinished.inWords(split)));
      page.table(StageTables.HEAD, StageTables.rows(branch.elements(), ground));
      return page.over(branch.branch().lineSpan());
    }
    page.say(
        HoverPage.answer(
            word + (isNamed ? " " + HoverPage.plain(name) : ""),
            ResponseWords.of(branch.response(), split.rate())));
    boolean isAlone = split.step() instanceof Step.MidSide || split.branches().size() < 2;
    page.plot(
        isAlone
            ? plots(split).single(name, word, branch.response())
            : plots(split).against(name, word, branch.response(), "sum of all", split.response()));
    double latest = ground.latencySeconds(List.of(split));
    double own = ground.latencySeconds(branch.elements());
    page.say(
        (own > 0 ? "Latency " + latency(own, split.rate()) : "No latency")
            + (latest > own && !isAlone
                ? ", delayed by " + latency(latest - own, split.rate()) + " to meet the latest."
                : "."));
    page.table(StageTables.HEAD, StageTables.rows(branch.elements(), ground));
    Unfinished.leftOut(branch.elements()).ifPresent(page::say);
    if (branch.elements().isEmpty()) {
      page.say("Nothing is done on it.");
    }
    page.notes(branch.branch().clauses().notes());
    return page.over(branch.branch().lineSpan());
  }

  /** Tells of a preset where it is applied. */
  HoverText apply(Step.Apply apply, Definition.Preset preset, TextSpan span) {
    return new PresetHover(ground).applied(apply, preset, path, span);
  }

  private StructurePlots plots(SplitElement split) {
    return new StructurePlots(source, split.rate());
  }

  private static double top(SplitElement split) {
    return split.rate().nyquist().hertz() * 0.999;
  }

  /** Spells a latency in time and in samples. */
  static String latency(double seconds, SampleRate rate) {
    return seconds == 0
        ? "none"
        : Readings.time(seconds)
            + " ("
            + NumberText.format(seconds * rate.hertz(), 1)
            + " samples)";
  }

  private static String slope(SplitElement split) {
    return split.step() instanceof Step.Multiband multiband
        ? NumberText.format(multiband.settings().number("slope").orElse(24.0))
        : "";
  }
}
