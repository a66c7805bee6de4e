package chainwright.app.view;

import chainwright.dsp.filter.ConstantFactor;
import chainwright.dsp.filter.Response;
import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.PathElement;
import chainwright.engine.path.PathElement.PathBranch;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.SignalPath;
import chainwright.engine.stage.StageSound;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Step;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The lines of a chain, numbered as a reader of the file counts them: what is bypassed counts, a
 * preset is one line, and what stands inside a block is counted there.
 *
 * @param path the chain
 * @param parts its own lines
 * @param nominal the level at which its dynamics are read
 */
public record Outline(SignalPath path, List<Part> parts, Nominal nominal) {

  private static final Response UNITY = new ConstantFactor(1);

  /**
   * Copies the list.
   *
   * @param path the chain
   * @param parts its own lines
   * @param nominal the level at which its dynamics are read
   */
  public Outline {
    parts = List.copyOf(parts);
  }

  /**
   * Numbers a chain.
   *
   * @param track the chain or bus
   * @param builder builds its path
   * @return its lines
   */
  public static Outline of(Definition.Track track, PathBuilder builder) {
    SignalPath path = builder.build(track);
    return new Outline(
        path,
        new Counting(path, track, builder).own(track.steps(), path.elements(), "", true),
        Nominal.of(builder.scope()));
  }

  /**
   * Returns every line.
   *
   * @return the lines in the order of the text, those inside others behind them
   */
  public List<Part> all() {
    return parts.stream().flatMap(Part::all).toList();
  }

  /**
   * Finds a line.
   *
   * @param labelOrNumber its label, or its number such as "3" or "3.2"
   * @return the line; of two with one label the first
   */
  public Optional<Part> find(String labelOrNumber) {
    return all().stream()
        .filter(
            part ->
                part.number().equals(labelOrNumber)
                    || part.label().filter(labelOrNumber::equals).isPresent())
        .findFirst();
  }

  /** Counts the lines of one chain. */
  private record Counting(SignalPath path, Definition.Track track, PathBuilder builder) {

    /** The lines that stand in the chain's own text: a preset is one of them. */
    List<Part> own(List<Step> steps, List<PathElement> elements, String prefix, boolean isMain) {
      List<Part> parts = new ArrayList<>();
      int at = 0;
      for (Step step : steps) {
        String number = prefix + (parts.size() + 1);
        if (step instanceof Step.Apply apply) {
          int start = at;
          while (at < elements.size() && isBroughtBy(apply, elements.get(at))) {
            at++;
          }
          parts.add(applied(apply, elements.subList(start, at), number, soFar(at, isMain)));
        } else {
          parts.add(part(elements.get(at), number, soFar(at + 1, isMain)));
          at++;
        }
      }
      return parts;
    }

    private boolean isBroughtBy(Step.Apply apply, PathElement element) {
      Section section = track.section();
      TextSpan line = apply.lineSpan();
      return element
          .appliedAt()
          .filter(place -> place.section() == section && place.span().equals(line))
          .isPresent();
    }

    private Optional<Response> soFar(int end, boolean isMain) {
      return isMain
          ? Optional.of(SignalPath.product(path.elements().subList(0, end)))
          : Optional.empty();
    }

    private Part applied(
        Step.Apply apply, List<PathElement> brought, String number, Optional<Response> soFar) {
      return new Part(
          number,
          "apply " + apply.preset().text(),
          apply.clauses(),
          apply.clauses().bypassed().isPresent(),
          Optional.empty(),
          SignalPath.product(brought),
          soFar,
          brought(brought, number + "."),
          brought);
    }

    /** The lines that a preset brings, in the order of the signal. */
    private List<Part> brought(List<PathElement> elements, String prefix) {
      List<Part> parts = new ArrayList<>();
      for (PathElement element : elements) {
        parts.add(part(element, prefix + (parts.size() + 1), Optional.empty()));
      }
      return parts;
    }

    private Part part(PathElement element, String number, Optional<Response> soFar) {
      if (element instanceof StageElement stage) {
        return new Part(
            number,
            stage.word(),
            stage.stage().clauses(),
            stage.isBypassed(),
            Optional.of(stage),
            stage.sound().map(StageSound::response).orElse(UNITY),
            soFar,
            sideChain(stage, number + "."),
            List.of(stage));
      }
      SplitElement split = (SplitElement) element;
      return new Part(
          number,
          split.step().accept(new StepName()),
          split.step().clauses(),
          split.isBypassed(),
          Optional.empty(),
          split.response(),
          soFar,
          inside(split, number + "."),
          List.of(split));
    }

    /** What the detector hears is a path of its own. */
    private List<Part> sideChain(StageElement stage, String prefix) {
      if (stage.stage().sideChain().isEmpty()) {
        return List.of();
      }
      Definition.Track heard =
          new Definition.Track(
              track.isBus(),
              track.name(),
              track.title(),
              track.declarations(),
              stage.stage().sideChain(),
              track.clauses(),
              stage.place().section(),
              track.lineSpan(),
              track.span());
      List<PathElement> elements = builder.build(heard).elements();
      return List.of(
          new Part(
              prefix + 1,
              "side-chain",
              Clauses.NONE,
              stage.isBypassed(),
              Optional.empty(),
              SignalPath.product(elements),
              Optional.empty(),
              own(stage.stage().sideChain(), elements, prefix + "1.", false),
              List.of()));
    }

    private List<Part> inside(SplitElement split, String prefix) {
      boolean isOneWay = split.step() instanceof Step.Insert || split.step() instanceof Step.During;
      if (isOneWay) {
        return elements(split, split.branches().get(0), prefix);
      }
      List<String> names = StepName.branches(split.step());
      List<Part> ways = new ArrayList<>();
      for (int i = 0; i < split.branches().size(); i++) {
        PathBranch way = split.branches().get(i);
        String number = prefix + (i + 1);
        ways.add(
            new Part(
                number,
                names.get(i),
                way.branch().clauses(),
                split.isBypassed() || way.branch().clauses().bypassed().isPresent(),
                Optional.empty(),
                way.response(),
                Optional.empty(),
                elements(split, way, number + "."),
                List.of()));
      }
      return ways;
    }

    private List<Part> elements(SplitElement split, PathBranch way, String prefix) {
      return split.appliedAt().isPresent()
          ? brought(way.elements(), prefix)
          : own(way.branch().steps(), way.elements(), prefix, false);
    }
  }
}
