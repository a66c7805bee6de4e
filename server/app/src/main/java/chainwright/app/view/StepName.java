package chainwright.app.view;

import chainwright.notation.model.Branch;
import chainwright.notation.model.Step;
import chainwright.quantity.Frequency;
import chainwright.quantity.QuantityRange;
import java.util.List;

/** Says how a line of a chain is called. */
record StepName() implements Step.Visitor<String> {

  @Override
  public String visitStage(Step.Stage stage) {
    return StepWord.of(stage);
  }

  @Override
  public String visitApply(Step.Apply apply) {
    return StepWord.of(apply) + " " + apply.preset().text();
  }

  @Override
  public String visitInsert(Step.Insert insert) {
    return titled(StepWord.of(insert), insert.title());
  }

  @Override
  public String visitParallel(Step.Parallel parallel) {
    return StepWord.of(parallel);
  }

  @Override
  public String visitMidSide(Step.MidSide midSide) {
    return StepWord.of(midSide);
  }

  @Override
  public String visitMultiband(Step.Multiband multiband) {
    return StepWord.of(multiband);
  }

  @Override
  public String visitDuring(Step.During during) {
    return StepWord.of(during)
        + " "
        + Readings.clock(during.from().seconds())
        + " to "
        + Readings.clock(during.to().seconds());
  }

  /**
   * Says how the ways through a structure are called.
   *
   * @param step the structure
   * @return a name for each of its branches
   */
  static List<String> branches(Step step) {
    return step instanceof Step.Multiband multiband
        ? multiband.bands().stream().map(StepName::band).toList()
        : step.branches().stream().map(StepName::branch).toList();
  }

  private static String branch(Branch branch) {
    return titled(branch.word(), branch.title());
  }

  private static String band(Step.Band band) {
    if (!(band.lowHz() > 0)) {
      return "band below " + Frequency.ofHertz(band.highHz());
    }
    return Double.isFinite(band.highHz())
        ? "band "
            + new QuantityRange(Frequency.ofHertz(band.lowHz()), Frequency.ofHertz(band.highHz()))
        : "band above " + Frequency.ofHertz(band.lowHz());
  }

  private static String titled(String word, String title) {
    return title.isEmpty() ? word : word + " \"" + title + "\"";
  }
}
