package chainwright.app.assist;

import chainwright.engine.rules.RuleBook;
import chainwright.notation.fault.Fault;
import chainwright.notation.lowering.Vocabulary;
import chainwright.notation.model.Deliberate;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Unit;
import java.util.Optional;

/**
 * Says what a word means wherever it stands: the name of a preset or a bus, a kind of source, a
 * unit, a rule, or a word of the notation.
 *
 * @param ground what the hover stands on
 */
record WordHover(HoverGround ground) {

  Optional<HoverText> at(Section section, int offset) {
    String text = section.text();
    int start = Math.min(offset, text.length());
    while (start > 0 && isWordPart(text.charAt(start - 1))) {
      start--;
    }
    int end = Math.min(offset, text.length());
    while (end < text.length() && isWordPart(text.charAt(end))) {
      end++;
    }
    return start == end
        ? Optional.empty()
        : word(text.substring(start, end), new TextSpan(start, end));
  }

  private Optional<HoverText> word(String word, TextSpan span) {
    return ground
        .scope()
        .preset(word)
        .map(preset -> new PresetHover(ground).of(preset, span))
        .or(
            () ->
                ground
                    .scope()
                    .track(word)
                    .map(track -> new TrackHover(ground).of(track, ground.path(track), span)))
        .or(
            () ->
                ground.catalogue().source(word).map(kind -> new SourceHover(ground).of(kind, span)))
        .or(() -> unit(word).map(says -> ground.page().say(says).over(span)))
        .or(
            () ->
                Vocabulary.find(word)
                    .map(
                        known ->
                            ground
                                .page()
                                .say(HoverPage.answer(word, known.says()))
                                .say("`" + known.form() + "`")
                                .over(span)));
  }

  private static Optional<String> unit(String word) {
    return Unit.parse(word)
        .filter(unit -> Vocabulary.find(word).isEmpty())
        .map(
            unit ->
                HoverPage.answer(
                    unit.symbol(), unit.spoken() + ", " + unit.dimension().description()));
  }

  /** Tells of a rule that is broken on purpose, or of a fault of the text that nothing silences. */
  HoverText rule(Deliberate deliberate) {
    String code = deliberate.rule().text();
    HoverPage page = ground.page();
    RuleBook.find(code)
        .ifPresentOrElse(
            rule ->
                page.say(HoverPage.answer(code, rule.card().title()))
                    .say(rule.card().why())
                    .say(ground.sources(rule.card().sources()))
                    .say("Broken on purpose here: " + HoverPage.plain(deliberate.reason()))
                    .say(more(code)),
            () ->
                Fault.find(code)
                    .ifPresentOrElse(
                        fault ->
                            page.say(HoverPage.answer(code, "a fault of the text, not a rule"))
                                .say("It is mended, not silenced. " + more(code)),
                        () -> page.say("There is no rule `" + code + "`.")));
    return page.over(deliberate.rule().span());
  }

  private static String more(String code) {
    return "More: `chainwright explain " + code + "`";
  }

  private static boolean isWordPart(char c) {
    return Character.isLetterOrDigit(c) || c == '-' || c == '_';
  }
}
