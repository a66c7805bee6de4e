package chainwright.notation.catalogue.yaml;

import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.Limit;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Reads one stage's file and checks what holds between its settings. */
final class StageReader {

  /** Words that may follow the settings of any stage and so can be none of their words. */
  private static final Set<String> TAKEN = Set.of("as", "bypassed", "deliberate", "to", "note");

  private final SettingReader settingReader;

  StageReader(Map<String, Citation> citations, Set<String> sourceKinds) {
    this.settingReader = new SettingReader(new RangeReader(citations, sourceKinds));
  }

  StageKind read(YamlValue root) {
    root.requireKeys(
        Set.of("stage", "title", "family", "order", "says", "overdone", "place", "settings"));
    String word = CatalogueReader.word(root.need("stage"));
    if (!root.file().equals("stages/" + word + ".yaml")) {
      throw root.need("stage").fault("the file must be called " + word + ".yaml");
    }
    double order = root.need("order").number();
    if (order != Math.rint(order)) {
      throw root.need("order").fault("must be a whole number, but was " + order);
    }
    List<Setting> settings = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (YamlValue entry : root.need("settings").items()) {
      Setting setting = settingReader.read(entry);
      if (!names.add(setting.name())) {
        throw entry.fault("the name `" + setting.name() + "` is taken");
      }
      settings.add(setting);
    }
    checkPositional(root, settings, names);
    checkReferences(root, settings, names);
    return new StageKind(
        word,
        root.need("title").text(),
        family(root.need("family")),
        (int) order,
        root.need("says").text(),
        root.need("overdone").text(),
        root.need("place").text(),
        settings);
  }

  private static Family family(YamlValue value) {
    for (Family family : Family.values()) {
      if (family.name().toLowerCase(Locale.ROOT).equals(value.text())) {
        return family;
      }
    }
    throw value.fault("there is no family `" + value.text() + "`");
  }

  private static void checkPositional(YamlValue root, List<Setting> settings, Set<String> names) {
    Set<String> seen = new HashSet<>();
    for (Setting setting : settings) {
      for (String mark : marks(setting)) {
        if (TAKEN.contains(mark) || (names.contains(mark) && !mark.equals(setting.name()))) {
          throw root.fault("`" + setting.name() + "`: the word `" + mark + "` is taken");
        }
        if (!seen.add(mark)) {
          throw root.fault(
              "`" + setting.name() + "` cannot be told from another positional setting: " + mark);
        }
      }
    }
  }

  /** By what a positional setting is known without its name: a dimension, its words, a name. */
  private static List<String> marks(Setting setting) {
    if (!setting.isPositional()) {
      return List.of();
    }
    if (setting.takes() instanceof Takes.InUnit inUnit) {
      return List.of(inUnit.unit().dimension().description());
    }
    if (setting.takes() instanceof Takes.OneOf oneOf) {
      return oneOf.words();
    }
    return List.of(setting.takes() instanceof Takes.Name ? "a name" : "a plain number");
  }

  private static void checkReferences(YamlValue root, List<Setting> settings, Set<String> names) {
    for (Setting setting : settings) {
      if (setting.byOmission() instanceof Default.InsteadOf instead
          && !names.contains(instead.other())) {
        throw root.fault(
            "`" + setting.name() + "` stands instead of no setting: " + instead.other());
      }
      if (setting.usedWith().filter(used -> !names.contains(used.setting())).isPresent()) {
        throw root.fault("`" + setting.name() + "` is used with no setting of this stage");
      }
      for (Limit limit : List.of(setting.low(), setting.high())) {
        if (limit instanceof Limit.OfSetting other && !names.contains(other.name())) {
          throw root.fault("`" + setting.name() + "`: its limit names no setting: " + other.name());
        }
      }
    }
  }
}
