package chainwright.engine.path;

import chainwright.dsp.filter.ConstantFactor;
import chainwright.dsp.filter.Crossover;
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseProduct;
import chainwright.dsp.filter.SumOfPaths;
import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.StageContext;
import chainwright.engine.stage.StageModels;
import chainwright.engine.stage.StageSound;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.model.Branch;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Step;
import chainwright.notation.project.Scope;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Frequency;
import chainwright.quantity.SampleRate;
import chainwright.quantity.Slope;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Builds the path of a chain or a bus.
 *
 * @param scope what the names mean
 * @param rate the sample rate of what comes to the path, until a conversion changes it
 */
public record PathBuilder(Scope scope, SampleRate rate) {

  private static final Response UNITY = new ConstantFactor(1);

  /**
   * Builds paths at the rate of the session.
   *
   * @param scope what the names mean
   */
  public PathBuilder(Scope scope) {
    this(scope, scope.sampleRate());
  }

  /** Where a step is read: what it inherits from the chain, the preset and the structure. */
  private record Where(
      Section section,
      Optional<Place> appliedAt,
      Set<String> presets,
      boolean isBypassed,
      boolean isPartial,
      Optional<SourceKind> source,
      OptionalDouble lowestHz,
      SampleRate rate,
      boolean isOnMainLine) {

    Where inPreset(Definition.Preset preset, Place apply, boolean bypassed) {
      Set<String> more = new HashSet<>(presets);
      more.add(preset.name().text());
      return new Where(
          preset.section(),
          appliedAt.isPresent() ? appliedAt : Optional.of(apply),
          more,
          isBypassed || bypassed || preset.clauses().bypassed().isPresent(),
          isPartial,
          source.isPresent() ? source : preset.source(),
          source.isPresent() || lowestHz.isPresent() ? lowestHz : usualLowestHz(preset.source()),
          rate,
          isOnMainLine);
    }

    Where partial(boolean bypassed) {
      return inStructure(bypassed, true);
    }

    /** Inside a structure everything runs at the rate that the structure has. */
    Where inStructure(boolean bypassed, boolean partial) {
      return new Where(
          section,
          appliedAt,
          presets,
          isBypassed || bypassed,
          isPartial || partial,
          source,
          lowestHz,
          rate,
          false);
    }

    /** What comes after some elements is at the rate that they leave. */
    Where behind(List<PathElement> elements) {
      return isOnMainLine
          ? new Where(
              section,
              appliedAt,
              presets,
              isBypassed,
              isPartial,
              source,
              lowestHz,
              SignalPath.rateBehind(elements, rate),
              true)
          : this;
    }

    Place place(TextSpan span) {
      return new Place(section, span);
    }
  }

  /**
   * Builds a path.
   *
   * @param track the chain or bus
   * @return its path
   */
  public SignalPath build(Definition.Track track) {
    Optional<SourceKind> source = track.declarations().sourceKind();
    Optional<Declarations.LowestNote> declared = track.declarations().lowestNote();
    OptionalDouble lowest =
        declared.isPresent()
            ? OptionalDouble.of(declared.get().frequency().hertz())
            : usualLowestHz(source);
    Where where =
        new Where(
            track.section(),
            Optional.empty(),
            Set.of(),
            track.clauses().bypassed().isPresent(),
            false,
            source,
            lowest,
            rate,
            true);
    return new SignalPath(
        track,
        readAll(track.steps(), where),
        source,
        lowest,
        declared.isPresent(),
        rate,
        scope.alignment());
  }

  private static OptionalDouble usualLowestHz(Optional<SourceKind> source) {
    return source.map(SourceKind::lowestHz).orElse(OptionalDouble.empty());
  }

  /**
   * Builds the elements of a preset, as if it were applied to a source of its own kind.
   *
   * @param preset the preset
   * @return its elements
   */
  public List<PathElement> build(Definition.Preset preset) {
    Where where =
        new Where(
            preset.section(),
            Optional.empty(),
            Set.of(preset.name().text()),
            preset.clauses().bypassed().isPresent(),
            false,
            preset.source(),
            usualLowestHz(preset.source()),
            rate,
            true);
    return readAll(preset.steps(), where);
  }

  private List<PathElement> readAll(List<Step> steps, Where where) {
    List<PathElement> elements = new ArrayList<>();
    Where next = where;
    for (Step step : steps) {
      List<PathElement> read = step.accept(new Reader(this, next));
      next = next.behind(read);
      elements.addAll(read);
    }
    return elements;
  }

  /** Says what elements a step brings into the path. */
  private record Reader(PathBuilder builder, Where where)
      implements Step.Visitor<List<PathElement>> {

    @Override
    public List<PathElement> visitStage(Step.Stage stage) {
      StageContext context =
          new StageContext(stage.settings(), where.rate(), where.source(), where.lowestHz());
      List<PathElement> sideChain =
          builder.readAll(stage.sideChain(), where.inStructure(false, false));
      return List.of(
          new StageElement(
              stage,
              where.place(stage.lineSpan()),
              where.appliedAt(),
              isBypassed(stage),
              where.isPartial(),
              context,
              StageModels.design(context).map(sound -> withSideChain(sideChain, sound)),
              sideChain));
    }

    /** A side chain stands between the signal and the band that the detector hears anyway. */
    private static StageSound withSideChain(List<PathElement> sideChain, StageSound sound) {
      if (sideChain.isEmpty()) {
        return sound;
      }
      List<Response> heard = new ArrayList<>();
      heard.add(SignalPath.product(sideChain));
      sound.detection().ifPresent(heard::add);
      return sound.withDetection(new ResponseProduct(heard));
    }

    @Override
    public List<PathElement> visitApply(Step.Apply apply) {
      Optional<Definition.Preset> preset = builder.scope().preset(apply.preset().text());
      if (preset.isEmpty() || where.presets().contains(apply.preset().text())) {
        return List.of();
      }
      Place line = where.place(apply.lineSpan());
      return builder.readAll(
          preset.get().steps(), where.inPreset(preset.get(), line, isBypassed(apply)));
    }

    @Override
    public List<PathElement> visitInsert(Step.Insert insert) {
      List<PathElement> body =
          builder.readAll(insert.model().steps(), where.inStructure(isBypassed(insert), false));
      double gainDb =
          insert.settings().number("send").orElse(0.0)
              - insert.settings().number("return").orElse(0.0);
      Response whole = times(SignalPath.product(body), gainDb);
      return split(insert, List.of(new PathBranch(insert.model(), body, whole)), whole);
    }

    @Override
    public List<PathElement> visitParallel(Step.Parallel parallel) {
      List<PathBranch> paths = new ArrayList<>();
      for (Branch path : parallel.paths()) {
        boolean isOff = path.clauses().bypassed().isPresent();
        List<PathElement> body =
            builder.readAll(path.steps(), where.partial(isBypassed(parallel) || isOff));
        double gainDb = path.settings().number("gain").orElse(0.0);
        Response response = isOff ? new ConstantFactor(0) : times(SignalPath.product(body), gainDb);
        paths.add(new PathBranch(path, body, response));
      }
      Response sum =
          paths.isEmpty()
              ? UNITY
              : new SumOfPaths(paths.stream().map(PathBranch::response).toList());
      return split(parallel, paths, sum);
    }

    @Override
    public List<PathElement> visitMidSide(Step.MidSide midSide) {
      List<PathBranch> parts = new ArrayList<>();
      Response mid = UNITY;
      for (Branch part : midSide.parts()) {
        List<PathElement> body = builder.readAll(part.steps(), where.partial(isBypassed(midSide)));
        Response response = SignalPath.product(body);
        parts.add(new PathBranch(part, body, response));
        mid = part.word().equals("mid") ? response : mid;
      }
      return split(midSide, parts, mid);
    }

    @Override
    public List<PathElement> visitMultiband(Step.Multiband multiband) {
      Slope slope = new Slope(multiband.settings().number("slope").orElse(24.0));
      List<PathBranch> bands = new ArrayList<>();
      for (int i = 0; i < multiband.bands().size(); i++) {
        Branch branch = multiband.bands().get(i).branch();
        List<PathElement> body =
            builder.readAll(branch.steps(), where.partial(isBypassed(multiband)));
        Response response =
            new ResponseProduct(
                List.of(band(multiband.bands(), i, slope), SignalPath.product(body)));
        bands.add(new PathBranch(branch, body, response));
      }
      Response sum =
          bands.isEmpty()
              ? UNITY
              : new SumOfPaths(bands.stream().map(PathBranch::response).toList());
      return split(multiband, bands, sum);
    }

    /**
     * One band of a split that is made from the lowest crossover upward; the bands below get the
     * all-pass of each crossover above them, so that all bands stay in phase.
     */
    private Response band(List<Step.Band> bands, int index, Slope slope) {
      List<Response> parts = new ArrayList<>();
      for (int i = 0; i + 1 < bands.size(); i++) {
        double edgeHz = bands.get(i).highHz();
        boolean exists = edgeHz > 0 && edgeHz < where.rate().hertz() / 2;
        if (exists) {
          Crossover crossover = crossover(Frequency.ofHertz(edgeHz), slope, where.rate());
          parts.add(i < index ? crossover.high() : i == index ? crossover.low() : crossover.sum());
        }
      }
      return parts.isEmpty() ? UNITY : new ResponseProduct(parts);
    }

    private static Crossover crossover(Frequency edge, Slope slope, SampleRate rate) {
      try {
        return Crossover.of(edge, slope, rate);
      } catch (IllegalArgumentException noSuchSlope) {
        return Crossover.of(edge, new Slope(24), rate);
      }
    }

    @Override
    public List<PathElement> visitDuring(Step.During during) {
      List<PathElement> body =
          builder.readAll(during.body().steps(), where.partial(isBypassed(during)));
      return split(
          during, List.of(new PathBranch(during.body(), body, SignalPath.product(body))), UNITY);
    }

    private List<PathElement> split(Step step, List<PathBranch> branches, Response response) {
      SplitElement split =
          new SplitElement(
              step,
              where.place(step.lineSpan()),
              where.appliedAt(),
              isBypassed(step),
              where.rate(),
              branches,
              response);
      return List.of(split.unread().isEmpty() ? split : split.withResponse(UNITY));
    }

    private boolean isBypassed(Step step) {
      return where.isBypassed() || step.clauses().bypassed().isPresent();
    }

    private static Response times(Response response, double gainDb) {
      return gainDb == 0
          ? response
          : new ResponseProduct(List.of(response, new ConstantFactor(Math.pow(10, gainDb / 20))));
    }
  }
}
