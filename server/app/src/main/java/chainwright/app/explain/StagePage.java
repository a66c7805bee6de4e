package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.app.page.Page;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What the trade knows of a stage.
 *
 * @param catalogue the trade's knowledge
 * @param kind the stage
 */
record StagePage(Catalogue catalogue, StageKind kind) {

  private static final int LONGEST = 72;

  Page page(Optional<SourceKind> source) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Paragraph(kind.says()));
    blocks.add(new Block.Code(form()));
    blocks.add(
        new Block.Terms(
            List.of(
                new Block.Term("Too much of it", kind.overdone()),
                new Block.Term("Its place", kind.place() + neighbours()))));
    RangeTable ranges = new RangeTable(catalogue);
    for (Setting setting : kind.settings()) {
      blocks.addAll(setting(setting, source, ranges));
    }
    blocks.addAll(ranges.sources());
    String title = kind.title() + ": `" + kind.word() + "`";
    return new Page(source.map(one -> title + " for " + one.inWords()).orElse(title), blocks);
  }

  /** One setting: what it is, then its ranges. */
  static List<Block> setting(Setting setting, Optional<SourceKind> source, RangeTable ranges) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Heading(setting.name() + ": " + SettingText.takes(setting)));
    blocks.add(
        new Block.Paragraph(
            Stream.of(setting.says(), SettingText.limits(setting), SettingText.omission(setting))
                .filter(sentence -> !sentence.isEmpty())
                .collect(Collectors.joining(" "))));
    blocks.addAll(ranges.of(setting, source));
    return blocks;
  }

  /** How it is written, what may be left out between brackets; a further line as in a chain. */
  private List<String> form() {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(kind.word());
    for (Setting setting : usualFirst()) {
      String form = SettingText.form(setting);
      if (line.length() + form.length() + 2 > LONGEST) {
        lines.add(line.toString());
        line = new StringBuilder("  ...");
      }
      line.append("  ").append(form);
    }
    lines.add(line.toString());
    return lines;
  }

  private List<Setting> usualFirst() {
    return kind.settings().stream()
        .sorted(Comparator.comparing(setting -> !isUsuallyWritten(setting)))
        .toList();
  }

  private static boolean isUsuallyWritten(Setting setting) {
    return setting.isPositional() || setting.byOmission() instanceof Default.Required;
  }

  private String neighbours() {
    List<StageKind> order = catalogue.stages();
    int at = order.indexOf(kind);
    String before = at > 0 ? "after `" + order.get(at - 1).word() + "`" : "";
    String after = at + 1 < order.size() ? "before `" + order.get(at + 1).word() + "`" : "";
    String both = before + (before.isEmpty() || after.isEmpty() ? "" : ", ") + after;
    return " In the usual order it comes " + both + ".";
  }
}
