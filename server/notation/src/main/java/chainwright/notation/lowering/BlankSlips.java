package chainwright.notation.lowering;

import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.fault.Fault;
import chainwright.notation.model.Unread;
import chainwright.notation.syntax.Item;
import chainwright.quantity.Unit;
import java.util.List;
import java.util.Optional;

/**
 * Settings with a blank too many or one too few: {@code make up 3 dB}, {@code Q2}; and notes in
 * place of a frequency, whose sharps begin a comment.
 *
 * @param kind what the line begins with
 * @param report where troubles go
 * @param unread what could not be read; what is found is added
 */
record BlankSlips(StageKind kind, Report report, List<Unread> unread) {

  /**
   * Reports a word that is no setting by itself, if it is such a slip.
   *
   * @param items what stands on the line
   * @param at the index of the word
   * @param known the words that mean something on the line
   * @return how many items belong to it; 0 if it is none
   */
  int report(List<Item> items, int at, List<String> known) {
    Item.Word word = (Item.Word) items.get(at);
    Optional<JoinedWords> joined = JoinedWords.at(items, at, this::isMeant);
    if (joined.isPresent()) {
      int count = joined.get().count();
      List<Setting> meant = reportJoined(joined.get(), known);
      boolean hasValue = at + count < items.size() && canBeValue(items.get(at + count), meant);
      return count + (hasValue ? 1 : 0);
    }
    if (report.isFound(Fault.MISSING_BLANK, word.span())) {
      return 0;
    }
    if (isGlued(word)) {
      return at + 1 < items.size() && isUnit(items.get(at + 1)) ? 2 : 1;
    }
    Optional<Unread> note = new NoteFault(kind, report).report(word);
    note.ifPresent(unread::add);
    return note.isPresent() ? 1 : 0;
  }

  /** Whether words that are joined are a setting, or said for one. */
  private boolean isMeant(String joined) {
    return kind.setting(joined).isPresent() || !SettingWords.of(kind, joined).isEmpty();
  }

  private List<Setting> reportJoined(JoinedWords words, List<String> known) {
    List<String> meant =
        kind.setting(words.text()).isPresent()
            ? List.of(words.text())
            : SettingWords.of(kind, words.text());
    report.unknownWord(
        Fault.UNKNOWN_SETTING,
        "`" + kind.word() + "` knows no `" + report.text(words.span()) + "`",
        words.span(),
        meant,
        Report.knownHere(known));
    List<Setting> settings =
        kind.settings().stream().filter(one -> meant.contains(one.name())).toList();
    unread.add(new Unread(words.span(), settings));
    return settings;
  }

  private boolean isGlued(Item.Word word) {
    Optional<GluedNumber> glued = GluedNumber.in(word.text(), one -> named(one).isPresent());
    Optional<Setting> setting = glued.flatMap(one -> named(one.word()));
    if (glued.isEmpty() || setting.isEmpty()) {
      return false;
    }
    report.unknownWord(
        Fault.UNKNOWN_SETTING,
        "`" + kind.word() + "` knows no `" + word.text() + "`",
        word.span(),
        List.of(setting.get().name() + " " + glued.get().number()),
        "");
    unread.add(new Unread(word.span(), setting.stream().toList()));
    return true;
  }

  private Optional<Setting> named(String word) {
    return kind.settings().stream().filter(one -> one.name().equalsIgnoreCase(word)).findFirst();
  }

  private static boolean canBeValue(Item item, List<Setting> settings) {
    boolean isNumber = item instanceof Item.Amount || item instanceof Item.Range;
    for (Setting one : settings) {
      boolean isWord = one.takes() instanceof Takes.OneOf || one.takes() instanceof Takes.Name;
      boolean isFlag = one.takes() instanceof Takes.Flag;
      if (isWord ? item instanceof Item.Word : (isNumber && !isFlag)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isUnit(Item item) {
    return item instanceof Item.Word word && Unit.parse(word.text()).isPresent();
  }
}
