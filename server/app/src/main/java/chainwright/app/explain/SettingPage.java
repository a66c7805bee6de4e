package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.app.page.Page;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the trade knows of a setting.
 *
 * @param catalogue the trade's knowledge
 * @param name the setting's name, in any letter case
 */
record SettingPage(Catalogue catalogue, String name) {

  /** The setting of the only stage that takes it, or what it says in each of those that do. */
  Page page() {
    List<StageKind> takers = new ArrayList<>();
    List<Block.Term> terms = new ArrayList<>();
    for (StageKind stage : catalogue.stages()) {
      for (Setting setting : stage.settings()) {
        if (setting.name().equalsIgnoreCase(name)) {
          takers.add(stage);
          terms.add(new Block.Term(stage.word() + " " + setting.name(), setting.says()));
        }
      }
    }
    if (takers.size() == 1) {
      return of(takers.get(0), setting(takers.get(0)));
    }
    Setting first = setting(takers.get(0));
    return new Page(
        first.name() + ": a setting of " + takers.size() + " stages",
        List.of(
            new Block.Terms(terms),
            new Block.Paragraph(
                "With the stage before it, `explain "
                    + takers.get(0).word()
                    + " "
                    + first.name()
                    + "` gives its limits, and what is usual for each kind of source.")));
  }

  /** The setting of one stage. */
  Page of(StageKind stage, Setting setting) {
    RangeTable ranges = new RangeTable(catalogue);
    List<Block> blocks = new ArrayList<>(StagePage.setting(setting, Optional.empty(), ranges));
    // Its heading is the page's title.
    Block.Heading heading = (Block.Heading) blocks.remove(0);
    blocks.addAll(ranges.sources());
    return new Page(stage.word() + " " + heading.text(), blocks);
  }

  private Setting setting(StageKind stage) {
    return stage.settings().stream()
        .filter(setting -> setting.name().equalsIgnoreCase(name))
        .findFirst()
        .orElseThrow();
  }
}
