package chainwright.engine.sound;

import chainwright.dsp.filter.BandsDesign;
import chainwright.dsp.filter.Crossover;
import chainwright.dsp.filter.FilterDesign;
import chainwright.dsp.signal.FactorDesign;
import chainwright.dsp.signal.MidSideDesign;
import chainwright.dsp.signal.PassageDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.RateConversion;
import chainwright.dsp.signal.RateFilter;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.dsp.signal.SumDesign;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.stage.StageAudio;
import chainwright.engine.stage.StageModels;
import chainwright.notation.model.Step;
import chainwright.quantity.Frequency;
import chainwright.quantity.Level;
import chainwright.quantity.SampleRate;
import chainwright.quantity.Slope;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes a path sound: a processor for each stage, put together as the structures say. */
public final class SoundBuilder {

  /** How long a passage or a part of a take comes and goes [s]; common practice, no source. */
  public static final double EDGE_SECONDS = 0.01;

  private static final Slope USUAL_SLOPE = new Slope(24);

  /** That of what is being built; it changes behind a conversion. */
  private SampleRate rate;

  private final Optional<Level> alignment;
  private final List<StageElement> silent = new ArrayList<>();
  private final boolean isMono;
  private final StageTap tap;

  /** What the noise of the next insert begins with. */
  private long seed;

  private SoundBuilder(
      SampleRate rate, Optional<Level> alignment, long seed, boolean isMono, StageTap tap) {
    this.seed = seed;
    this.rate = rate;
    this.alignment = alignment;
    this.isMono = isMono;
    this.tap = tap;
  }

  /**
   * Makes a path sound.
   *
   * @param path the path; its sample rate is that of the audio
   * @param isMono whether all channels hold the same sound, that of a recording of one channel
   * @return what processes its audio
   */
  public static PathSound build(SignalPath path, boolean isMono) {
    return build(path, isMono, 0, StageTap.NONE);
  }

  /**
   * Makes a path sound that stands behind others.
   *
   * @param path the path; its sample rate is that of the audio
   * @param isMono whether all channels hold the same sound
   * @param latencyFrames how late the sound is when it comes to the path [frames], ≥ 0
   * @param tap may listen to what goes into and comes out of each stage
   * @return what processes its audio; its own latency does not count what came before
   */
  public static PathSound build(SignalPath path, boolean isMono, int latencyFrames, StageTap tap) {
    SoundBuilder builder =
        new SoundBuilder(path.rate(), path.alignment(), seedOf(path), isMono, tap);
    List<PathElement> elements =
        path.elements().stream().filter(element -> !element.isBypassed()).toList();
    int end = elements.size();
    boolean isDithered =
        end > 0
            && elements.get(end - 1) instanceof StageElement last
            && last.word().equals("dither");
    int split = isDithered ? end - 1 : end;
    return builder.whole(elements.subList(0, split), elements.subList(split, end), latencyFrames);
  }

  /** Divides the path where the sample rate changes; behind each change no sound is late yet. */
  private PathSound whole(List<PathElement> elements, List<PathElement> dither, int latencyFrames) {
    List<ProcessorDesign> bodies = new ArrayList<>();
    List<RateConversion> conversions = new ArrayList<>();
    int begin = 0;
    int late = latencyFrames;
    for (int i = 0; i < elements.size(); i++) {
      Optional<RateFilter> change = rateChange(elements.get(i));
      if (change.isPresent()) {
        bodies.add(series(elements.subList(begin, i), late));
        conversions.add(RateConversion.design(change.get()));
        rate = change.get().to();
        begin = i + 1;
        late = 0;
      }
    }
    bodies.add(series(elements.subList(begin, elements.size()), late));
    int lateAtEnd = late + bodies.get(bodies.size() - 1).latencyFrames();
    ProcessorDesign ending = series(dither, lateAtEnd);
    List<RateLeg> legs = new ArrayList<>();
    for (int i = 0; i < conversions.size(); i++) {
      legs.add(new RateLeg(conversions.get(i), bodies.get(i + 1)));
    }
    return new PathSound(bodies.get(0), legs, ending, silent);
  }

  private static Optional<RateFilter> rateChange(PathElement element) {
    return element instanceof StageElement stage ? stage.rateChange() : Optional.empty();
  }

  /** Returns a number of the chain's own, the same every time. */
  private static long seedOf(SignalPath path) {
    return (long) path.track().name().text().hashCode() << Integer.SIZE;
  }

  /**
   * Returns how much later a path puts out what comes in than its response says, by look-ahead, by
   * filters that need what comes after, and by converters.
   *
   * @param path the path
   * @return the latency [s]; that of what {@link #build} makes, with the look-ahead of each change
   *     of the sample rate
   */
  public static double latencySeconds(SignalPath path) {
    return latencySeconds(path.alignment(), path.elements());
  }

  /**
   * Returns how much later elements in a row put out what comes in.
   *
   * @param alignment which digital level stands for 0 dBu, if known
   * @param elements the elements; those bypassed count nothing
   * @return the latency [s], a whole number of samples at each rate; 0 if a structure allows no
   *     design, which other findings report
   */
  public static double latencySeconds(Optional<Level> alignment, List<PathElement> elements) {
    double seconds = 0;
    int begin = 0;
    for (int i = 0; i < elements.size(); i++) {
      Optional<RateFilter> change = rateChange(elements.get(i));
      if (change.isPresent()) {
        seconds += evenLatencySeconds(alignment, elements.subList(begin, i));
        seconds += change.get().reachFrames() / change.get().from().hertz();
        begin = i + 1;
      }
    }
    return seconds + evenLatencySeconds(alignment, elements.subList(begin, elements.size()));
  }

  /** The latency of elements of one sample rate. */
  private static double evenLatencySeconds(Optional<Level> alignment, List<PathElement> elements) {
    if (elements.isEmpty()) {
      return 0;
    }
    SampleRate rate = elements.get(0).rate();
    try {
      return new SoundBuilder(rate, alignment, 0, false, StageTap.NONE)
              .series(elements, 0)
              .latencyFrames()
          / rate.hertz();
    } catch (IllegalArgumentException impossible) {
      return 0;
    }
  }

  private ProcessorDesign series(List<PathElement> elements, int latencyFrames) {
    List<ProcessorDesign> parts = new ArrayList<>();
    int late = latencyFrames;
    for (PathElement element : elements) {
      if (!element.isBypassed()) {
        Optional<ProcessorDesign> part =
            element instanceof StageElement stage
                ? stage(stage, late)
                : Optional.of(split((SplitElement) element, late));
        late += part.map(ProcessorDesign::latencyFrames).orElse(0);
        part.ifPresent(parts::add);
      }
    }
    return FilterDesign.inSeries(parts);
  }

  private Optional<ProcessorDesign> stage(StageElement stage, int latencyFrames) {
    Optional<ProcessorDesign> keyFilter =
        stage.sideChain().isEmpty()
            ? Optional.empty()
            : Optional.of(series(stage.sideChain(), latencyFrames));
    Optional<ProcessorDesign> processor =
        StageModels.processor(new StageAudio(stage.context(), keyFilter, latencyFrames, isMono));
    if (processor.isEmpty()) {
      silent.add(stage);
    }
    return processor.map(design -> tap.tap(stage, design));
  }

  private ProcessorDesign split(SplitElement split, int latencyFrames) {
    return split.step().accept(new Structure(this, split, latencyFrames));
  }

  private record Structure(SoundBuilder builder, SplitElement split, int latencyFrames)
      implements Step.Visitor<ProcessorDesign> {

    @Override
    public ProcessorDesign visitStage(Step.Stage stage) {
      throw new IllegalArgumentException("a stage has no branches");
    }

    @Override
    public ProcessorDesign visitApply(Step.Apply apply) {
      throw new IllegalArgumentException("a preset stands in the path as its stages");
    }

    @Override
    public ProcessorDesign visitInsert(Step.Insert insert) {
      InsertSound way =
          new InsertSound(insert.settings(), builder.alignment, builder.rate, builder.seed++);
      List<PathElement> model = split.branches().get(0).elements();
      boolean isModelled = !model.stream().allMatch(PathElement::isBypassed);
      ProcessorDesign out = way.out();
      return new SeriesDesign(
          List.of(
              out,
              builder.series(model, latencyFrames + out.latencyFrames()),
              way.back(isModelled)));
    }

    @Override
    public ProcessorDesign visitParallel(Step.Parallel parallel) {
      List<ProcessorDesign> paths = new ArrayList<>();
      for (PathBranch path : split.branches()) {
        if (path.branch().clauses().bypassed().isEmpty()) {
          double gainDb = path.branch().settings().number("gain").orElse(0.0);
          paths.add(new SeriesDesign(List.of(branch(path), FactorDesign.ofGainDb(gainDb))));
        }
      }
      return paths.isEmpty() ? new FactorDesign(0) : new SumDesign(paths);
    }

    @Override
    public ProcessorDesign visitMidSide(Step.MidSide midSide) {
      ProcessorDesign mid = new SeriesDesign(List.of());
      ProcessorDesign side = mid;
      for (PathBranch part : split.branches()) {
        if (part.branch().word().equals("mid")) {
          mid = branch(part);
        } else {
          side = branch(part);
        }
      }
      return new MidSideDesign(mid, side);
    }

    @Override
    public ProcessorDesign visitMultiband(Step.Multiband multiband) {
      Slope slope = multiband.settings().number("slope").map(Slope::new).orElse(USUAL_SLOPE);
      List<Crossover> crossovers = new ArrayList<>();
      List<ProcessorDesign> bands = new ArrayList<>();
      for (int i = 0; i < split.branches().size(); i++) {
        bands.add(branch(split.branches().get(i)));
        if (i + 1 < split.branches().size()) {
          double edgeHz = multiband.bands().get(i).highHz();
          crossovers.add(Crossover.of(Frequency.ofHertz(edgeHz), slope, builder.rate));
        }
      }
      return bands.isEmpty() ? new SeriesDesign(List.of()) : new BandsDesign(crossovers, bands);
    }

    @Override
    public ProcessorDesign visitDuring(Step.During during) {
      double hertz = builder.rate.hertz();
      return new PassageDesign(
          branch(split.branches().get(0)),
          Math.round(during.from().seconds() * hertz) + latencyFrames,
          Math.round(during.to().seconds() * hertz) + latencyFrames,
          (int) Math.round(EDGE_SECONDS * hertz));
    }

    private ProcessorDesign branch(PathBranch branch) {
      return builder.series(branch.elements(), latencyFrames);
    }
  }
}
