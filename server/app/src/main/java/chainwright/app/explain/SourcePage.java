package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.app.page.Page;
import chainwright.app.view.Readings;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.quantity.Frequency;
import chainwright.quantity.NumberText;
import java.util.ArrayList;
import java.util.List;

/**
 * What the trade knows of a kind of source.
 *
 * @param catalogue the trade's knowledge
 * @param kind the kind of source
 */
record SourcePage(Catalogue catalogue, SourceKind kind) {

  Page page() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Code(List.of("source " + kind.word())));
    blocks.add(new Block.Terms(facts()));
    if (!kind.zones().isEmpty()) {
      blocks.add(new Block.Heading("Zones of its spectrum"));
      blocks.add(
          new Block.Table(
              List.of("zone", "where"),
              kind.zones().stream()
                  .map(zone -> List.of(zone.name(), Readings.band(zone.lowHz(), zone.highHz())))
                  .toList()));
    }
    List<List<String>> usual = usual();
    if (!usual.isEmpty()) {
      blocks.add(new Block.Heading("What is usual for it"));
      blocks.add(new Block.Table(List.of("setting", "cautious", "usual", "extreme"), usual));
    }
    kind.like()
        .ifPresent(
            like ->
                blocks.add(
                    new Block.Paragraph(
                        "For settings that are not listed, the ranges for `"
                            + like
                            + "` hold, else those for any source.")));
    blocks.add(new Block.Heading("Sources"));
    blocks.add(new Block.Items(kind.citations().stream().map(one -> one.spelt()).toList()));
    return new Page(kind.title() + ": `" + kind.word() + "`", blocks);
  }

  private List<Block.Term> facts() {
    List<Block.Term> facts = new ArrayList<>();
    kind.lowestHz()
        .ifPresent(
            hertz ->
                facts.add(
                    new Block.Term(
                        "Fundamentals",
                        hertz(hertz)
                            + (kind.lowestNote().isEmpty() ? "" : " (" + kind.lowestNote() + ")")
                            + " to "
                            + hertz(kind.highestHz())
                            + ": "
                            + kind.note())));
    facts.add(
        new Block.Term(
            "Crest factor",
            NumberText.format(kind.crestLowDb())
                + " to "
                + NumberText.format(kind.crestHighDb())
                + " dB"));
    if (!kind.spill().isEmpty()) {
      facts.add(new Block.Term("Spill", kind.spill()));
    }
    return facts;
  }

  private List<List<String>> usual() {
    List<List<String>> rows = new ArrayList<>();
    for (StageKind stage : catalogue.stages()) {
      for (Setting setting : stage.settings()) {
        for (RangeRow row : setting.rows()) {
          if (row.sources().contains(kind.word())) {
            rows.add(
                List.of(
                    stage.word() + " " + setting.name() + SettingText.direction(row),
                    SettingText.cautious(setting, row.range()),
                    SettingText.usual(setting, row.range()),
                    SettingText.extreme(setting, row.range())));
          }
        }
      }
    }
    return rows;
  }

  private static String hertz(double hertz) {
    return Frequency.ofHertz(hertz).toString();
  }
}
