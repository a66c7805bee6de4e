package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.app.page.Page;
import chainwright.app.view.Outline;
import chainwright.app.view.Part;
import chainwright.app.view.StageWords;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.TradeRange;
import chainwright.notation.model.Settings;
import chainwright.notation.model.Value;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Reads one stage of a chain aloud: what it does there, and how each of its settings stands to what
 * is usual.
 *
 * @param outline the chain
 * @param stage the stage
 * @param part its line
 */
public record StageReading(Outline outline, StageElement stage, Part part) {

  /**
   * Reads the stage.
   *
   * @return the page
   */
  public Page page() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Paragraph(stage.stage().kind().says()));
    blocks.add(new Block.Paragraph("Here: " + StageWords.of(stage, outline.nominal()) + "."));
    blocks.addAll(ChainReading.said(part.clauses()));
    Set<String> sources = new LinkedHashSet<>();
    List<Block.Term> settings = new ArrayList<>();
    for (Setting setting : stage.stage().kind().settings()) {
      value(setting)
          .ifPresent(
              value -> settings.add(new Block.Term(setting.name(), said(setting, value, sources))));
    }
    blocks.add(new Block.Heading("Settings in use"));
    blocks.add(new Block.Terms(settings));
    blocks.add(
        new Block.Terms(
            List.of(
                new Block.Term("Too much of it", stage.stage().kind().overdone()),
                new Block.Term("Its place", stage.stage().kind().place()))));
    if (!sources.isEmpty()) {
      blocks.add(new Block.Heading("Sources of the ranges"));
      blocks.add(new Block.Items(List.copyOf(sources)));
    }
    String chain = outline.path().track().name().text();
    return new Page(chain + " " + part.number() + ": " + ChainReading.head(part), blocks);
  }

  private Optional<String> value(Setting setting) {
    Optional<Value> value = stage.stage().settings().value(setting.name());
    return value.isEmpty() && setting.byOmission() instanceof Default.Computed computed
        ? Optional.of("computed: " + computed.how())
        : value.map(one -> Settings.inWords(setting, one));
  }

  private String said(Setting setting, String value, Set<String> sources) {
    Settings settings = stage.stage().settings();
    Optional<SourceKind> source = stage.context().source();
    String used = value + (settings.written(setting.name()).isPresent() ? "" : " (default)");
    Optional<TradeRange> range = settings.range(setting, source);
    if (range.isEmpty()) {
      return used + ". " + setting.says();
    }
    range.get().sources().forEach(citation -> sources.add(citation.spelt()));
    return used
        + ". "
        + setting.says()
        + " Usual"
        + source.map(kind -> " for " + kind.inWords()).orElse("")
        + ": "
        + SettingText.usual(setting, range.get())
        + ", cautious: "
        + SettingText.cautious(setting, range.get())
        + number(setting, settings)
            .map(number -> "; this is " + verdict(range.get(), number))
            .orElse("")
        + ".";
  }

  private static String verdict(TradeRange range, double number) {
    return range.verdict(number).name().toLowerCase(Locale.ROOT);
  }

  /** The number in the setting's own unit, in which its ranges are given. */
  private static Optional<Double> number(Setting setting, Settings settings) {
    return settings
        .number(setting.name())
        .map(
            base ->
                setting.takes() instanceof Takes.InUnit takes
                    ? base / takes.unit().toBase()
                    : base);
  }
}
