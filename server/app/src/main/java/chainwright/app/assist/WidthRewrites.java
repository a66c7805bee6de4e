package chainwright.app.assist;

import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.model.Branch;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Step;
import chainwright.notation.model.Value;
import chainwright.notation.model.Written;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.NumberText;
import chainwright.quantity.QualityFactor;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes a Q as the width in octaves that it stands for, and a width as its Q.
 *
 * <p>Four decimals are kept, so that there and back gives the same number again to three.
 */
public final class WidthRewrites {

  private static final int DECIMALS = 4;

  private WidthRewrites() {}

  /**
   * Returns the rewrites of the stages that a stretch of text touches.
   *
   * @param definition the definition
   * @param range the stretch, from the start of the definition's section
   * @return the rewrites, in the order of the text
   */
  public static List<Rewrite> in(Definition definition, TextSpan range) {
    List<Rewrite> rewrites = new ArrayList<>();
    if (definition instanceof Definition.Track track) {
      steps(track.steps(), range, track.section(), rewrites);
    } else if (definition instanceof Definition.Preset preset) {
      steps(preset.steps(), range, preset.section(), rewrites);
    }
    return rewrites;
  }

  private static void steps(
      List<Step> steps, TextSpan range, Section section, List<Rewrite> rewrites) {
    for (Step step : steps) {
      if (!step.span().isTouching(range)) {
        continue;
      }
      if (step instanceof Step.Stage stage) {
        if (stage.lineSpan().isTouching(range)) {
          settings(stage.settings(), section, rewrites);
        }
        steps(stage.sideChain(), range, section, rewrites);
      }
      for (Branch branch : step.branches()) {
        steps(branch.steps(), range, section, rewrites);
      }
    }
  }

  private static void settings(Settings settings, Section section, List<Rewrite> rewrites) {
    boolean hasWidth = settings.kind().setting("centre").isPresent();
    settings
        .written("Q")
        .filter(written -> hasWidth)
        .ifPresent(written -> rewrites.add(rewrite(written, section)));
  }

  private static Rewrite rewrite(Written written, Section section) {
    QualityFactor quality = new QualityFactor(((Value.Of) written.value()).quantity().baseValue());
    TextSpan span = written.span();
    boolean isQ = written.nameSpan().isPresent();
    String other =
        isQ
            ? NumberText.format(quality.toBandwidth().octaves(), DECIMALS) + " oct"
            : "Q " + NumberText.format(quality.value(), DECIMALS);
    String title =
        isQ
            ? "Write the Q as its width in octaves: `" + other + "`"
            : "Write the width as its Q: `" + other + "`";
    return new Rewrite(title, List.of(new PlacedEdit(section, new TextEdit(span, other))));
  }
}
