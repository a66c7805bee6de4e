package chainwright.engine.rules;

import chainwright.dsp.nonlinear.Aliases;
import chainwright.dsp.nonlinear.SaturationModel;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.HarmonicModel;
import chainwright.engine.stage.StageSound;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Severity;
import chainwright.quantity.NumberText;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * A clipper or saturation folds harmonics back into hearing.
 *
 * <p>Why: aliases follow no harmony, so small ones are already unpleasant.
 *
 * <p>At fault: {@code clipper ceiling -3 dBFS knee 0 dB oversampling 1}. Not at fault: the same
 * with {@code oversampling 8}. How loud the tone is, a recording would tell; here it is a tone of 5
 * kHz as far over the ceiling as the expected reduction, else 3 dB, or 6 dB above the alignment
 * level of a saturation (common practice, no source).
 */
public final class NonlinearStageAliases implements Rule {

  private static final double TONE_HZ = 5000;
  private static final double HIGHEST_HZ = 20_000;
  private static final double LOUDEST_DB = -60;
  private static final double CLIPPED_DB = 3;
  private static final double ABOVE_ALIGNMENT_DB = 6;
  private static final String SETTING = "oversampling";

  private static final RuleCard CARD =
      new RuleCard(
          "nonlinear-stage-aliases",
          Severity.WARNING,
          "Harmonics that fold into false tones",
          "Clipping makes harmonics above half the rate that fold down as false tones. They do not"
              + " follow the harmony, so small ones are already unpleasant.",
          List.of("KRA", "KAH", "CALC"));

  /** Makes the rule, which has no state. */
  public NonlinearStageAliases() {}

  @Override
  public RuleCard card() {
    return CARD;
  }

  @Override
  public void check(Evidence evidence, Consumer<Finding> report) {
    for (StageElement element : evidence.path().stages()) {
      Optional<HarmonicModel> harmonics = element.sound().flatMap(StageSound::harmonics);
      Optional<Setting> oversampling = element.stage().kind().setting(SETTING);
      if (harmonics.isPresent() && oversampling.isPresent()) {
        check(evidence, new Tone(element, harmonics.get()), oversampling.get(), report);
      }
    }
  }

  /** A loud tone through a stage. */
  private record Tone(StageElement element, HarmonicModel harmonics) {

    double levelDbfs() {
      return isClipped()
          ? element.context().number("ceiling") + overDb()
          : SaturationModel.ALIGNMENT_LEVEL_DBFS + ABOVE_ALIGNMENT_DB;
    }

    boolean isClipped() {
      return element.stage().kind().setting("ceiling").isPresent();
    }

    double overDb() {
      return element.context().number("expected-reduction", CLIPPED_DB);
    }

    double aliasDb(double oversampling) {
      double rateHz = element.context().rate().hertz();
      double innerHz = oversampling * rateHz;
      double keptHz = Math.min(HIGHEST_HZ, rateHz / 2);
      int count = Aliases.count(TONE_HZ, innerHz, keptHz);
      return Aliases.strongestDb(
          harmonics.harmonics(TONE_HZ, levelDbfs(), count), TONE_HZ, innerHz, keptHz);
    }

    String inWords() {
      return isClipped()
          ? Figures.amount(overDb()) + " over the ceiling"
          : Figures.amount(ABOVE_ALIGNMENT_DB) + " above the alignment level";
    }
  }

  private static void check(
      Evidence evidence, Tone tone, Setting setting, Consumer<Finding> report) {
    double used = tone.element().context().number(SETTING, 1);
    double levelDb = tone.aliasDb(used);
    if (levelDb <= LOUDEST_DB) {
      return;
    }
    Optional<Double> enough =
        setting.offers().stream()
            .filter(times -> times > used && tone.aliasDb(times) <= LOUDEST_DB)
            .findFirst();
    List<Fix> fixes =
        enough
            .map(times -> SETTING + " " + NumberText.format(times))
            .map(
                text ->
                    Edits.changing(
                        "Write `" + text + "`",
                        true,
                        List.of(
                            Mends.set(
                                tone.element(), SETTING, NumberText.format(enough.orElseThrow())))))
            .stream()
            .toList();
    report.accept(
        evidence.finding(
            CARD,
            Mends.at(tone.element(), SETTING),
            "at "
                + NumberText.format(used)
                + " times the sample rate a tone of 5 kHz "
                + tone.inWords()
                + " makes a false tone at "
                + Figures.change(levelDb)
                + "; how loud such tones are, only a recording tells",
            enough
                    .map(times -> "Write `" + SETTING + " " + NumberText.format(times) + "`")
                    .orElse("Work it less hard")
                + ", or use a softer knee.",
            List.of(),
            fixes));
  }
}
