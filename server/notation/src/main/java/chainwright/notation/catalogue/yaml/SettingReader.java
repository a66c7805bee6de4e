package chainwright.notation.catalogue.yaml;

import chainwright.notation.catalogue.Default;
import chainwright.notation.catalogue.Limit;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.Takes;
import chainwright.notation.catalogue.UsedWith;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads one setting of a stage and checks that its values fit each other. */
final class SettingReader {

  private static final Pattern SHARE_OF_RATE = Pattern.compile("(0\\.\\d+) rate");
  private static final double NYQUIST_SHARE = 0.5;

  private final RangeReader rangeReader;

  SettingReader(RangeReader rangeReader) {
    this.rangeReader = rangeReader;
  }

  Setting read(YamlValue entry) {
    entry.requireKeys(
        Set.of(
            "name",
            "takes",
            "words",
            "positional",
            "span",
            "required",
            "says",
            "hard",
            "default",
            "instead-of",
            "offers",
            "ranges",
            "unranged",
            "used-with"));
    Takes takes = takes(entry);
    boolean isNumeric =
        takes instanceof Takes.InUnit
            || takes instanceof Takes.Quality
            || takes instanceof Takes.PlainNumber;
    Limit low = new Limit.Open();
    Limit high = new Limit.Open();
    if (isNumeric) {
      List<YamlValue> hard = entry.need("hard").items();
      if (hard.size() != 2) {
        throw entry.need("hard").fault("two limits are needed, but there are " + hard.size());
      }
      low = limit(hard.get(0));
      high = limit(hard.get(1));
    } else {
      for (String key : List.of("hard", "offers", "ranges", "unranged")) {
        entry
            .field(key)
            .ifPresent(
                value -> {
                  throw value.fault("only a setting with a number has it");
                });
      }
    }
    List<Double> offers = offers(entry, low, high);
    Default byOmission = byOmission(entry, takes, isNumeric);
    if (byOmission instanceof Default.Amount amount) {
      requireAllowed(entry.need("default"), amount.value(), low, high, offers);
    }
    List<RangeRow> rows =
        entry.field("ranges").isPresent()
            ? rangeReader.read(entry.need("ranges"), low, high, offers)
            : List.of();
    return new Setting(
        CatalogueReader.word(entry.need("name")),
        takes,
        isTrue(entry, "positional"),
        says(entry, isNumeric && rows.isEmpty()),
        low,
        high,
        byOmission,
        offers,
        rows,
        entry.field("used-with").map(SettingReader::usedWith));
  }

  /** The other setting, then the values with which this one is used. */
  private static UsedWith usedWith(YamlValue list) {
    List<String> words = new ArrayList<>();
    list.items().forEach(item -> words.add(item.text()));
    if (words.isEmpty()) {
      throw list.fault("the name of another setting is needed");
    }
    return new UsedWith(words.get(0), words.subList(1, words.size()));
  }

  /** A setting without ranges says why in `unranged`, and its reader is told so. */
  private static String says(YamlValue entry, boolean needsReason) {
    String says = entry.need("says").text();
    Optional<YamlValue> reason = entry.field("unranged");
    if (needsReason && reason.isEmpty()) {
      throw entry.fault("`ranges` are missing and no `unranged` says why");
    }
    if (!needsReason && reason.isPresent()) {
      throw reason.get().fault("a setting with ranges has no reason to be without");
    }
    return reason.map(text -> says + " " + text.text()).orElse(says);
  }

  private static Takes takes(YamlValue entry) {
    String takes = entry.need("takes").text();
    boolean isSpan = isTrue(entry, "span");
    if (takes.equals("words") != entry.field("words").isPresent()) {
      throw entry.fault("`words` and `takes: words` belong together");
    }
    Takes kind =
        switch (takes) {
          case "words" -> new Takes.OneOf(words(entry.need("words")));
          case "name" -> new Takes.Name();
          case "flag" -> new Takes.Flag();
          case "count" -> new Takes.PlainNumber();
          case "Q" -> new Takes.Quality();
          default ->
              new Takes.InUnit(
                  Unit.parse(takes)
                      .filter(unit -> unit.symbol().equals(takes))
                      .orElseThrow(
                          () -> entry.need("takes").fault("there is no unit `" + takes + "`")),
                  isSpan);
        };
    if (isSpan && !(kind instanceof Takes.InUnit)) {
      throw entry.need("span").fault("only a setting with a unit takes two values");
    }
    return kind;
  }

  private static List<String> words(YamlValue list) {
    List<String> words = new ArrayList<>();
    for (YamlValue word : list.items()) {
      if (words.contains(CatalogueReader.word(word))) {
        throw word.fault("the word stands here twice");
      }
      words.add(word.text());
    }
    if (words.isEmpty()) {
      throw list.fault("at least one word is needed");
    }
    return words;
  }

  private static Limit limit(YamlValue value) {
    if (value.isNull()) {
      return new Limit.Open();
    }
    if (value.isNumber()) {
      return new Limit.Fixed(value.number());
    }
    Matcher share = SHARE_OF_RATE.matcher(value.text());
    if (share.matches()) {
      double part = Double.parseDouble(share.group(1));
      if (part > NYQUIST_SHARE) {
        throw value.fault("more than half the sample rate means nothing, but was " + part);
      }
      return new Limit.OfSampleRate(part);
    }
    return new Limit.OfSetting(CatalogueReader.word(value));
  }

  private static Default byOmission(YamlValue entry, Takes takes, boolean isNumeric) {
    Optional<YamlValue> field = entry.field("default");
    if (isTrue(entry, "required")) {
      field.ifPresent(
          value -> {
            throw value.fault("a required setting has no default");
          });
      return new Default.Required();
    }
    Optional<YamlValue> other = entry.field("instead-of");
    if (other.isPresent()) {
      field.ifPresent(
          value -> {
            throw value.fault("a setting instead of another has no default");
          });
      return new Default.InsteadOf(other.get().text());
    }
    if (field.isEmpty()) {
      return new Default.Absent();
    }
    YamlValue value = field.get();
    if (value.isNumber() && isNumeric) {
      return new Default.Amount(value.number());
    }
    if (value.isText() && takes instanceof Takes.OneOf oneOf) {
      if (!oneOf.words().contains(value.text())) {
        throw value.fault("`" + value.text() + "` is none of the words");
      }
      return new Default.Word(value.text());
    }
    if (value.isText() || value.isNumber() || value.isNull() || value.isList()) {
      throw value.fault("does not fit what the setting takes");
    }
    value.requireKeys(Set.of("computed"));
    return new Default.Computed(value.need("computed").text());
  }

  private static List<Double> offers(YamlValue entry, Limit low, Limit high) {
    List<Double> offers = new ArrayList<>();
    entry
        .field("offers")
        .ifPresent(
            list -> {
              for (YamlValue item : list.items()) {
                requireAllowed(item, item.number(), low, high, List.of());
                offers.add(item.number());
              }
            });
    return offers;
  }

  static void requireAllowed(
      YamlValue place, double value, Limit low, Limit high, List<Double> offers) {
    if ((low instanceof Limit.Fixed floor && value < floor.value())
        || (high instanceof Limit.Fixed roof && value > roof.value())) {
      throw place.fault("lies outside `hard`: " + value);
    }
    if (!offers.isEmpty() && !offers.contains(value)) {
      throw place.fault("is not one of the values in `offers`: " + value);
    }
  }

  private static boolean isTrue(YamlValue entry, String key) {
    return entry.field(key).map(YamlValue::isTrue).orElse(false);
  }
}
