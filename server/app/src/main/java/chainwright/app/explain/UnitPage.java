package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.app.page.Page;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What a unit measures, and which settings take it.
 *
 * @param catalogue the trade's knowledge
 * @param unit the unit
 */
record UnitPage(Catalogue catalogue, Unit unit) {

  Page page() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block.Paragraph(
            "Said aloud: " + unit.spoken() + ". It makes " + unit.dimension().description() + "."));
    String others =
        Arrays.stream(Unit.values())
            .filter(other -> other != unit && other.dimension() == unit.dimension())
            .map(other -> "`" + other.symbol() + "`")
            .collect(Collectors.joining(", "));
    if (!others.isEmpty()) {
      blocks.add(new Block.Paragraph("The same can be said in " + others + "."));
    }
    String takers = takers();
    blocks.add(
        new Block.Paragraph(
            takers.isEmpty() ? "No stage takes it so far." : "Taken by " + takers + "."));
    return new Page(unit.symbol() + ": a unit", blocks);
  }

  private String takers() {
    List<String> takers = new ArrayList<>();
    for (StageKind stage : catalogue.stages()) {
      for (Setting setting : stage.settings()) {
        if (setting.takes() instanceof Takes.InUnit takes
            && takes.unit().dimension() == unit.dimension()) {
          takers.add("`" + stage.word() + " " + setting.name() + "`");
        }
      }
    }
    return String.join(", ", takers);
  }
}
