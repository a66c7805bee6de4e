package chainwright.app.view;

import chainwright.app.plot.Curve;
import chainwright.app.plot.CurveRole;
import chainwright.app.plot.FrequencyMarker;
import chainwright.app.plot.FrequencyPlot;
import chainwright.app.plot.HarmonicsPlot;
import chainwright.app.plot.Plot;
import chainwright.app.plot.Samples;
import chainwright.app.plot.Zone;
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseSearch;
import chainwright.dsp.nonlinear.Harmonics;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.stage.StageSound;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.lowering.NoteName;
import chainwright.notation.model.Settings;
import chainwright.quantity.Frequency;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Makes the plots of stages and chains from their true responses. */
public final class StagePlots {

  private static final int POINTS = 200;
  private static final int HARMONICS = 10;
  private static final double LOWEST_HZ = 20;
  private static final double HIGHEST_HZ = 20_000;
  private static final double PLAIN_TONE_HZ = 100;

  /** Less than the width of a line in any plot of ours. */
  private static final double INDISTINCT_DB = 0.02;

  private StagePlots() {}

  /**
   * Returns the plot that says most of a stage: its static curve if it has one, its harmonics if it
   * adds some, its decay if it goes on after the sound, else its response.
   *
   * @param stage the stage
   * @param soFar what the chain does up to and with the stage; empty to leave it out
   * @param nominal the level at which dynamics and saturation are read
   * @return the plot; empty if the stage cannot be designed
   */
  public static Optional<Plot> stage(
      StageElement stage, Optional<Response> soFar, Nominal nominal) {
    if (stage.sound().isEmpty()) {
      return Optional.empty();
    }
    StageSound sound = stage.sound().get();
    if (sound.curve().isPresent()) {
      return Optional.of(DynamicsPlots.level(stage, sound.curve().get(), nominal));
    }
    if (sound.harmonics().isPresent()) {
      return Optional.of(harmonics(stage, nominal.levelDbfs()));
    }
    if (sound.decay().isPresent()) {
      return DecayPlots.of(stage).map(Plot.class::cast);
    }
    return Optional.of(frequency(stage, sound.response(), soFar));
  }

  /**
   * Returns the response of a stage, with the chain up to here.
   *
   * @param stage the stage
   * @param response the stage's response
   * @param soFar the chain up to and with the stage; empty to leave it out
   * @return the plot, from 20 Hz to 20 kHz or half the sample rate
   */
  public static FrequencyPlot frequency(
      StageElement stage, Response response, Optional<Response> soFar) {
    Frequency nyquist = stage.context().rate().nyquist();
    return FrequencyPlot.of(title(stage), withChain(stage.word(), response, soFar, nyquist))
        .withZones(zones(stage.context().source()))
        .withMarkers(markers(stage, response));
  }

  /**
   * A curve and the chain up to and with it; one that lies exactly under the other would not be
   * seen, so then one stands for both and says so.
   */
  private static List<Curve> withChain(
      String word, Response response, Optional<Response> soFar, Frequency nyquist) {
    if (soFar.isEmpty()) {
      return List.of(curve(word, CurveRole.STAGE, nyquist, response));
    }
    boolean isSame =
        Arrays.stream(grid(nyquist, soFar.get()))
            .allMatch(
                at ->
                    Math.abs(soFar.get().decibelsAt(at) - response.decibelsAt(at)) < INDISTINCT_DB);
    return isSame
        ? List.of(curve(word + " = chain so far", CurveRole.STAGE, nyquist, response))
        : List.of(
            curve("chain so far", CurveRole.CHAIN_SO_FAR, nyquist, soFar.get()),
            curve(word, CurveRole.STAGE, nyquist, response));
  }

  /**
   * Returns the response of a whole chain.
   *
   * @param title the heading
   * @param path the chain's path
   * @return the plot
   */
  public static FrequencyPlot chain(String title, SignalPath path) {
    Frequency nyquist = path.rate().nyquist();
    FrequencyPlot plot =
        FrequencyPlot.of(
                title, List.of(curve(whole(path), CurveRole.STAGE, nyquist, path.response())))
            .withZones(zones(path.source()));
    return inWorkingRange(plot, path.elements(), nyquist);
  }

  private static String word(PathElement element) {
    return element instanceof StageElement stage
        ? stage.word()
        : StepWord.of(((SplitElement) element).step());
  }

  /** Names the curve of a chain, and what it lacks. */
  private static String whole(SignalPath path) {
    List<String> lacking = path.uncomputed().stream().map(StagePlots::word).distinct().toList();
    return lacking.isEmpty() ? "whole chain" : "whole chain without " + String.join(", ", lacking);
  }

  /**
   * Returns the response of a structure or a preset, or of one of the ways through it.
   *
   * @param part the line
   * @param path the chain that it stands in
   * @return the plot
   */
  public static FrequencyPlot part(Part part, SignalPath path) {
    Frequency nyquist = path.rate().nyquist();
    FrequencyPlot plot =
        FrequencyPlot.of(
                part.words(), withChain(part.words(), part.response(), part.soFar(), nyquist))
            .withZones(zones(path.source()));
    return inWorkingRange(plot, part.elements(), nyquist);
  }

  /**
   * Returns what a stage's detector hears of each frequency.
   *
   * @param stage a stage with a detector
   * @param inside a stage of its side-chain to be drawn by itself; empty for none
   * @return the plot; empty if the detector hears all frequencies alike
   */
  public static Optional<FrequencyPlot> detection(
      StageElement stage, Optional<StageElement> inside) {
    return stage
        .sound()
        .flatMap(StageSound::detection)
        .map(
            heard -> {
              Frequency nyquist = stage.context().rate().nyquist();
              List<Curve> curves = new ArrayList<>();
              Optional<Response> alone =
                  inside.flatMap(StageElement::sound).map(StageSound::response);
              curves.add(
                  curve(
                      "detector hears",
                      alone.isPresent() ? CurveRole.CHAIN_SO_FAR : CurveRole.STAGE,
                      nyquist,
                      heard));
              alone.ifPresent(
                  response ->
                      curves.add(curve(inside.get().word(), CurveRole.STAGE, nyquist, response)));
              FrequencyPlot plot =
                  FrequencyPlot.of("Heard by the detector of the " + stage.word(), curves)
                      .withZones(zones(stage.context().source()));
              return alone
                  .map(response -> plot.withMarkers(markers(inside.get(), response)))
                  .orElse(plot);
            });
  }

  /**
   * Returns the harmonics that a stage adds to a sine.
   *
   * @param stage a stage that adds harmonics
   * @param levelDbfs the level of the sine [dBFS]
   * @return the plot, of the source's lowest note or of 100 Hz
   * @throws IllegalArgumentException if the stage adds none
   */
  public static HarmonicsPlot harmonics(StageElement stage, double levelDbfs) {
    return harmonics(stage, toneHz(stage), levelDbfs);
  }

  /**
   * Returns the tone that a stage's harmonics are shown of.
   *
   * @param stage the stage
   * @return its frequency [Hz]: the source's lowest note, or 100 Hz
   */
  public static double toneHz(StageElement stage) {
    return stage.context().lowestHz().orElse(PLAIN_TONE_HZ);
  }

  /**
   * Returns the harmonics that a stage adds to a sine.
   *
   * @param stage a stage that adds harmonics
   * @param hertz the frequency of the sine [Hz]
   * @param levelDbfs the level of the sine [dBFS]
   * @return the plot
   * @throws IllegalArgumentException if the stage adds none
   */
  public static HarmonicsPlot harmonics(StageElement stage, double hertz, double levelDbfs) {
    Harmonics harmonics =
        stage
            .sound()
            .flatMap(StageSound::harmonics)
            .orElseThrow(() -> new IllegalArgumentException("the stage adds no harmonics"))
            .harmonics(hertz, levelDbfs, HARMONICS);
    double[] levels = new double[HARMONICS];
    for (int i = 0; i < HARMONICS; i++) {
      levels[i] = harmonics.levelDbfs(i + 1) - harmonics.levelDbfs(1);
    }
    return HarmonicsPlot.of(title(stage), hertz, Samples.of(levels));
  }

  /**
   * Returns how a stage is headed: its title and its written values.
   *
   * @param stage the stage
   * @return such as "High-pass filter 66 Hz, 18 dB/oct"
   */
  public static String title(StageElement stage) {
    StringBuilder title = new StringBuilder(stage.stage().kind().title());
    stage.stage().settings().written().stream()
        .filter(written -> written.setting().isPositional() || written.setting().name().equals("Q"))
        .forEach(
            written ->
                title
                    .append(title.indexOf(",") < 0 && !title.toString().contains("  ") ? " " : ", ")
                    .append(written.setting().name().equals("Q") ? "Q " : "")
                    .append(Settings.inWords(written.setting(), written.value())));
    return title.toString();
  }

  private static List<FrequencyMarker> markers(StageElement stage, Response response) {
    Settings settings = stage.context().settings();
    List<FrequencyMarker> markers = new ArrayList<>();
    if (settings.number("gain").isEmpty() && settings.number("depth").isEmpty()) {
      double top = Math.min(HIGHEST_HZ, stage.context().rate().nyquist().hertz() * 0.999);
      ResponseSearch.findCrossings(response, ResponseSearch.HALF_POWER_DB, LOWEST_HZ, top)
          .forEach(hertz -> mark(response, hertz, "", markers));
    } else {
      for (String name : List.of("cutoff", "centre", "frequency", "mains")) {
        settings.number(name).ifPresent(hertz -> mark(response, hertz, "", markers));
      }
    }
    OptionalDouble lowest = stage.context().lowestHz();
    if (lowest.isPresent()) {
      double hertz = lowest.getAsDouble();
      mark(response, hertz, NoteName.nearest(hertz) + " ", markers);
    }
    return markers;
  }

  private static void mark(
      Response response, double hertz, String name, List<FrequencyMarker> markers) {
    double decibels = response.decibelsAt(hertz);
    if (hertz > 0 && Double.isFinite(decibels)) {
      markers.add(
          new FrequencyMarker(
              hertz,
              decibels,
              name + Readings.gainAt(decibels, Frequency.ofHertz(Math.rint(hertz * 10) / 10))));
    }
  }

  static List<Zone> zones(Optional<SourceKind> source) {
    return source
        .map(
            kind ->
                kind.zones().stream()
                    .map(zone -> new Zone(zone.name(), zone.lowHz(), zone.highHz()))
                    .toList())
        .orElse(List.of());
  }

  private static FrequencyPlot inWorkingRange(
      FrequencyPlot plot, List<PathElement> elements, Frequency nyquist) {
    double[] hertz = grid(nyquist, SignalPath.product(elements));
    return WorkingRange.of(elements, hertz).map(plot::withValues).orElse(plot);
  }

  static Curve curve(String label, CurveRole role, Frequency nyquist, Response response) {
    double[] hertz = grid(nyquist, response);
    return new Curve(label, role, Samples.of(hertz), Samples.of(response.toDecibels(hertz)));
  }

  /**
   * The frequencies of a plot, from 20 Hz to 20 kHz or just below half the sample rate: evenly by
   * octaves, and where the response is narrower than that.
   */
  private static double[] grid(Frequency nyquist, Response response) {
    double top = Math.min(HIGHEST_HZ, nyquist.hertz() * 0.999);
    DoubleStream even =
        IntStream.range(0, POINTS)
            .mapToDouble(i -> LOWEST_HZ * Math.pow(top / LOWEST_HZ, i / (POINTS - 1.0)));
    DoubleStream narrow = response.narrowHertz().filter(hertz -> hertz > LOWEST_HZ && hertz < top);
    return DoubleStream.concat(even, narrow).sorted().distinct().toArray();
  }
}
