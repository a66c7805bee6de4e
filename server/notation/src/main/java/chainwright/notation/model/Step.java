package chainwright.notation.model;

import chainwright.notation.catalogue.StageKind;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.TimeSpan;
import java.util.List;

/** One thing that happens to the signal, in its place in the order. */
public sealed interface Step {

  /**
   * Returns what else is said of it.
   *
   * @return label, bypass, deliberate rules and notes
   */
  Clauses clauses();

  /**
   * Returns its first line, without a block.
   *
   * @return the span
   */
  TextSpan lineSpan();

  /**
   * Returns all of it, with its block.
   *
   * @return the span
   */
  TextSpan span();

  /**
   * Returns the ways through it that hold further steps.
   *
   * @return the branches; empty for a stage and for {@code apply}
   */
  List<Branch> branches();

  /**
   * Answers a question that every kind of step answers in its own way.
   *
   * @param visitor the question
   * @param <R> the type of the answer
   * @return the answer
   */
  <R> R accept(Visitor<R> visitor);

  /**
   * A stage of the catalogue.
   *
   * @param word the stage's word
   * @param settings its settings; {@code settings.kind()} is its kind
   * @param sideChain what happens to the signal that its detector hears
   * @param clauses what else is said of it
   * @param lineSpan its first line
   * @param span all of it
   */
  record Stage(
      Name word,
      Settings settings,
      List<Step> sideChain,
      Clauses clauses,
      TextSpan lineSpan,
      TextSpan span)
      implements Step {

    /**
     * Copies the side chain.
     *
     * @param word the stage's word
     * @param settings its settings
     * @param sideChain its side chain
     * @param clauses what else is said
     * @param lineSpan its first line
     * @param span all of it
     */
    public Stage {
      sideChain = List.copyOf(sideChain);
    }

    /**
     * Returns the kind of stage.
     *
     * @return the catalogue's entry
     */
    public StageKind kind() {
      return settings.kind();
    }

    @Override
    public List<Branch> branches() {
      return List.of();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitStage(this);
    }
  }

  /**
   * All stages of a preset.
   *
   * @param preset the preset's name
   * @param clauses what else is said of it
   * @param lineSpan its line
   * @param span the same
   */
  record Apply(Name preset, Clauses clauses, TextSpan lineSpan, TextSpan span) implements Step {
    @Override
    public List<Branch> branches() {
      return List.of();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitApply(this);
    }
  }

  /**
   * An analogue device with its way out and back.
   *
   * @param title what the device is
   * @param settings levels, latency and clip level
   * @param model what stages stand for it
   * @param clauses what else is said of it
   * @param lineSpan its first line
   * @param span all of it
   */
  record Insert(
      String title,
      Settings settings,
      Branch model,
      Clauses clauses,
      TextSpan lineSpan,
      TextSpan span)
      implements Step {
    @Override
    public List<Branch> branches() {
      return List.of(model);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitInsert(this);
    }
  }

  /**
   * Paths that all receive the signal and are added again.
   *
   * @param paths the paths
   * @param clauses what else is said of it
   * @param lineSpan its first line
   * @param span all of it
   */
  record Parallel(List<Branch> paths, Clauses clauses, TextSpan lineSpan, TextSpan span)
      implements Step {

    /**
     * Copies the paths.
     *
     * @param paths the paths
     * @param clauses what else is said
     * @param lineSpan its first line
     * @param span all of it
     */
    public Parallel {
      paths = List.copyOf(paths);
    }

    @Override
    public List<Branch> branches() {
      return paths;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitParallel(this);
    }
  }

  /**
   * Stages for the middle and for the side of a stereo signal.
   *
   * @param parts the branches "mid" and "side", each at most once
   * @param clauses what else is said of it
   * @param lineSpan its first line
   * @param span all of it
   */
  record MidSide(List<Branch> parts, Clauses clauses, TextSpan lineSpan, TextSpan span)
      implements Step {

    /**
     * Copies the parts.
     *
     * @param parts the branches
     * @param clauses what else is said
     * @param lineSpan its first line
     * @param span all of it
     */
    public MidSide {
      parts = List.copyOf(parts);
    }

    @Override
    public List<Branch> branches() {
      return parts;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitMidSide(this);
    }
  }

  /**
   * The spectrum split into bands that are treated apart and added again.
   *
   * @param settings the settings of the split
   * @param bands the bands, lowest first
   * @param clauses what else is said of it
   * @param lineSpan its first line
   * @param span all of it
   */
  record Multiband(
      Settings settings, List<Band> bands, Clauses clauses, TextSpan lineSpan, TextSpan span)
      implements Step {

    /**
     * Copies the bands.
     *
     * @param settings the settings of the split
     * @param bands the bands
     * @param clauses what else is said
     * @param lineSpan its first line
     * @param span all of it
     */
    public Multiband {
      bands = List.copyOf(bands);
    }

    @Override
    public List<Branch> branches() {
      return bands.stream().map(Band::branch).toList();
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitMultiband(this);
    }
  }

  /**
   * One band of a split.
   *
   * @param lowHz its lower end [Hz]; 0 for the lowest band
   * @param highHz its upper end [Hz]; infinite for the highest band
   * @param branch what happens in it
   */
  record Band(double lowHz, double highHz, Branch branch) {}

  /**
   * Stages for one passage of the recording only.
   *
   * @param from where it begins
   * @param to where it ends
   * @param body the stages
   * @param clauses what else is said of it
   * @param lineSpan its first line
   * @param span all of it
   */
  record During(
      TimeSpan from, TimeSpan to, Branch body, Clauses clauses, TextSpan lineSpan, TextSpan span)
      implements Step {
    @Override
    public List<Branch> branches() {
      return List.of(body);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visitDuring(this);
    }
  }

  /**
   * A question to a step. No method has a default, so that a new kind of step breaks every visitor
   * until it has been thought about there.
   *
   * @param <R> the type of the answer
   */
  interface Visitor<R> {

    /**
     * Answers for a stage.
     *
     * @param stage the stage
     * @return the answer
     */
    R visitStage(Stage stage);

    /**
     * Answers for a preset that is applied.
     *
     * @param apply the step
     * @return the answer
     */
    R visitApply(Apply apply);

    /**
     * Answers for an analogue insert.
     *
     * @param insert the step
     * @return the answer
     */
    R visitInsert(Insert insert);

    /**
     * Answers for parallel paths.
     *
     * @param parallel the step
     * @return the answer
     */
    R visitParallel(Parallel parallel);

    /**
     * Answers for stages in the middle and at the side.
     *
     * @param midSide the step
     * @return the answer
     */
    R visitMidSide(MidSide midSide);

    /**
     * Answers for a split into bands.
     *
     * @param multiband the step
     * @return the answer
     */
    R visitMultiband(Multiband multiband);

    /**
     * Answers for a passage.
     *
     * @param during the step
     * @return the answer
     */
    R visitDuring(During during);
  }
}
