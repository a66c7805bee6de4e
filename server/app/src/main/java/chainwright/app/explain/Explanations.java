package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.app.page.Page;
import chainwright.engine.rules.RuleBook;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.lowering.Nearest;
import chainwright.notation.lowering.TradeWords;
import chainwright.notation.lowering.Vocabulary;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Finds the page for a word.
 *
 * @param catalogue the trade's knowledge
 */
public record Explanations(Catalogue catalogue) {

  /**
   * Returns what can be explained, in groups.
   *
   * @return the page
   */
  public Page index() {
    return new IndexPage(catalogue).page();
  }

  /**
   * Explains one word.
   *
   * @param word a stage, a rule, a fault of the text, a kind of source, a word of the notation, a
   *     setting or a unit, in any letter case
   * @return its page, with a pointer to whatever else is called so; empty if nothing is
   */
  public Optional<Page> explain(String word) {
    List<Topic> topics = topics(word);
    if (topics.isEmpty()) {
      return Optional.empty();
    }
    Page page = topics.get(0).page().get();
    if (topics.size() == 1) {
      return Optional.of(page);
    }
    List<Block> blocks = new ArrayList<>(page.blocks());
    for (Topic other : topics.subList(1, topics.size())) {
      blocks.add(
          new Block.Paragraph(
              "`"
                  + word
                  + "` is also "
                  + other.kind().noun()
                  + (other.kind() == Topic.Kind.SETTING
                      ? ": `explain STAGE "
                          + word
                          + "` tells of it, for `"
                          + String.join("`, `", takers(word))
                          + "`."
                      : ".")));
    }
    return Optional.of(new Page(page.title(), blocks));
  }

  /**
   * Explains a setting of one stage, or a stage for one kind of source.
   *
   * @param stage the stage's word
   * @param word the setting's name, or the source's word
   * @return the page, or empty if there is none
   */
  public Optional<Page> explain(String stage, String word) {
    Optional<StageKind> kind = stage(stage);
    Optional<Setting> setting = kind.flatMap(one -> setting(one, word));
    if (kind.isPresent() && setting.isPresent()) {
      return Optional.of(new SettingPage(catalogue, word).of(kind.get(), setting.get()));
    }
    return kind.flatMap(
        one -> source(word).map(source -> new StagePage(catalogue, one).page(Optional.of(source))));
  }

  /**
   * Returns the words that are near to a misspelt one.
   *
   * @param word the misspelt word
   * @return those near to it, nearest first; empty if none is
   */
  public List<String> near(String word) {
    Set<String> known = new LinkedHashSet<>();
    catalogue.stages().forEach(stage -> known.add(stage.word()));
    RuleBook.all().forEach(rule -> known.add(rule.card().code()));
    FindingPage.faults().forEach(fault -> known.add(fault.code()));
    catalogue.sources().forEach(source -> known.add(source.word()));
    Vocabulary.all().forEach(keyword -> known.add(keyword.text()));
    catalogue.stages().forEach(stage -> stage.settings().forEach(one -> known.add(one.name())));
    List<String> meant = TradeWords.writtenFor(word).stream().filter(known::contains).toList();
    return meant.isEmpty() ? Nearest.to(word, known) : meant;
  }

  private List<Topic> topics(String word) {
    List<Topic> topics = new ArrayList<>();
    stage(word)
        .ifPresent(
            stage ->
                topics.add(
                    new Topic(
                        Topic.Kind.STAGE,
                        stage.word(),
                        () -> new StagePage(catalogue, stage).page(Optional.empty()))));
    RuleBook.all().stream()
        .filter(rule -> rule.card().code().equalsIgnoreCase(word))
        .forEach(
            rule ->
                topics.add(
                    new Topic(
                        Topic.Kind.RULE,
                        rule.card().code(),
                        () -> FindingPage.of(rule.card()).page())));
    FindingPage.faults().stream()
        .filter(fault -> fault.code().equalsIgnoreCase(word))
        .forEach(
            fault ->
                topics.add(
                    new Topic(Topic.Kind.FAULT, fault.code(), () -> FindingPage.of(fault).page())));
    source(word)
        .ifPresent(
            source ->
                topics.add(
                    new Topic(
                        Topic.Kind.SOURCE,
                        source.word(),
                        () -> new SourcePage(catalogue, source).page())));
    Vocabulary.all().stream()
        .filter(keyword -> keyword.text().equalsIgnoreCase(word))
        .filter(keyword -> stage(word).isEmpty())
        .forEach(
            keyword ->
                topics.add(new Topic(Topic.Kind.WORD, keyword.text(), () -> WordPage.of(keyword))));
    // A stage tells of its own settings by itself.
    if (takers(word).stream().anyMatch(taker -> !taker.equalsIgnoreCase(word))) {
      topics.add(
          new Topic(Topic.Kind.SETTING, word, () -> new SettingPage(catalogue, word).page()));
    }
    Unit.parse(word)
        .ifPresent(
            unit ->
                topics.add(
                    new Topic(
                        Topic.Kind.UNIT,
                        unit.symbol(),
                        () -> new UnitPage(catalogue, unit).page())));
    topics.sort(Comparator.comparing(Topic::kind));
    return topics;
  }

  /** The stages that take a setting. */
  private List<String> takers(String setting) {
    return catalogue.stages().stream()
        .filter(stage -> setting(stage, setting).isPresent())
        .map(StageKind::word)
        .toList();
  }

  private Optional<StageKind> stage(String word) {
    return catalogue.stages().stream()
        .filter(stage -> stage.word().equalsIgnoreCase(word))
        .findFirst();
  }

  private Optional<SourceKind> source(String word) {
    return catalogue.sources().stream()
        .filter(source -> source.word().equalsIgnoreCase(word))
        .findFirst();
  }

  private static Optional<Setting> setting(StageKind stage, String name) {
    return stage.settings().stream()
        .filter(setting -> setting.name().equalsIgnoreCase(name))
        .findFirst();
  }
}
