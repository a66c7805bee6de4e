package chainwright.app.view;

import chainwright.notation.model.Step;

/** Says by what word each kind of line of a chain begins. */
public record StepWord() implements Step.Visitor<String> {

  /**
   * Returns the word.
   *
   * @param step the line
   * @return such as "bell" or "parallel"
   */
  public static String of(Step step) {
    return step.accept(new StepWord());
  }

  @Override
  public String visitStage(Step.Stage stage) {
    return stage.kind().word();
  }

  @Override
  public String visitApply(Step.Apply apply) {
    return "apply";
  }

  @Override
  public String visitInsert(Step.Insert insert) {
    return "insert";
  }

  @Override
  public String visitParallel(Step.Parallel parallel) {
    return "parallel";
  }

  @Override
  public String visitMidSide(Step.MidSide midSide) {
    return "mid-side";
  }

  @Override
  public String visitMultiband(Step.Multiband multiband) {
    return "multiband";
  }

  @Override
  public String visitDuring(Step.During during) {
    return "during";
  }
}
