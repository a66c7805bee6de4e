package chainwright.notation.lowering;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.fault.Fault;
import chainwright.notation.syntax.Item;
import chainwright.notation.syntax.Statement;
import chainwright.notation.text.TextEdit;
import chainwright.quantity.Dimension;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A word on the line of a stage that is a setting of other stages only.
 *
 * @param kind what the line begins with
 * @param statement the line
 * @param catalogue the vocabulary
 * @param report where troubles go
 */
record OtherStage(StageKind kind, Statement statement, Catalogue catalogue, Report report) {

  private static final int NAMED = 3;

  /**
   * Reports the word, if it is one. Where there is one stage that can mean all that is written on
   * the line, that one was meant.
   *
   * @return whether the line was meant for another stage
   */
  boolean report(Item.Word word) {
    List<StageKind> having = having(word.text());
    if (having.isEmpty()) {
      return false;
    }
    List<StageKind> fitting =
        report.isTrial() ? List.of() : having.stream().filter(this::fits).toList();
    List<String> names = having.stream().limit(NAMED).map(one -> "`" + one.word() + "`").toList();
    boolean isOne = fitting.size() == 1 && statement.head().isPresent();
    report.add(
        Fault.UNKNOWN_SETTING,
        word.span(),
        "`"
            + kind.word()
            + "` knows no `"
            + word.text()
            + "`, which is a setting of "
            + String.join(", ", names)
            + (having.size() > NAMED ? " and others" : ""),
        isOne ? fitting.get(0).says() : "",
        isOne
            ? "Write `" + fitting.get(0).word() + "`, which can mean all that stands here."
            : "Remove it, or write the stage that it belongs to.",
        isOne
            ? List.of(
                report.change(
                    "Write `" + fitting.get(0).word() + "`",
                    true,
                    new TextEdit(statement.head().orElseThrow().span(), fitting.get(0).word())))
            : List.of());
    return isOne;
  }

  /**
   * Reports a value whose unit the setting does not take, where one other stage has that setting in
   * that unit and can mean all that is written on the line.
   *
   * @return whether the line was meant for another stage
   */
  boolean report(Setting setting, Item.Amount amount) {
    Optional<Dimension> written = amount.unit().flatMap(Unit::parse).map(Unit::dimension);
    boolean isOwn = written.equals(SettingFaults.dimension(setting));
    if (written.isEmpty() || isOwn || report.isTrial() || statement.head().isEmpty()) {
      return false;
    }
    List<StageKind> fitting =
        having(setting.name()).stream()
            .filter(one -> SettingFaults.dimension(setting(one, setting.name())).equals(written))
            .filter(this::fits)
            .toList();
    if (fitting.size() != 1) {
      return false;
    }
    String word = fitting.get(0).word();
    report.add(
        Fault.WRONG_UNIT,
        amount.span(),
        "the `"
            + setting.name()
            + "` of `"
            + kind.word()
            + "` is "
            + SettingFaults.dimension(setting).map(Dimension::description).orElse("a word")
            + ", that of `"
            + word
            + "` "
            + written.get().description(),
        fitting.get(0).says(),
        "Write `" + word + "`, which can mean all that stands here, or the other unit.",
        report.change(
            "Write `" + word + "`",
            true,
            new TextEdit(statement.head().orElseThrow().span(), word)));
    return true;
  }

  private static Setting setting(StageKind kind, String name) {
    return kind.setting(name).orElseThrow();
  }

  boolean isKnown(Item.Word word) {
    return !having(word.text()).isEmpty();
  }

  private List<StageKind> having(String setting) {
    List<StageKind> having = new ArrayList<>();
    for (StageKind one : catalogue.stages()) {
      if (one.family() != Family.STRUCTURE && one.setting(setting).isPresent()) {
        having.add(one);
      }
    }
    return having;
  }

  private boolean fits(StageKind other) {
    Report tried = report.trial();
    SettingsReader.read(other, statement, false, catalogue, tried);
    return tried.findings().isEmpty() && !report.isTroubled(statement.lineSpan());
  }
}
