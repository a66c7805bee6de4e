package chainwright.notation.catalogue.yaml;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;

/** A value of a YAML file that knows where it stands, so that every complaint names its place. */
final class YamlValue {

  private static final int MOST_CHARACTERS = 200_000;
  private static final int DEEPEST = 12;

  private final String file;
  private final String path;
  private final @Nullable Object value;

  private YamlValue(String file, String path, @Nullable Object value) {
    this.file = file;
    this.path = path;
    this.value = value;
  }

  /** Parses one file: plain values only, no repeated keys, no aliases, limited size and depth. */
  static YamlValue parse(String file, String text) {
    LoaderOptions options = new LoaderOptions();
    options.setAllowDuplicateKeys(false);
    options.setMaxAliasesForCollections(0);
    options.setCodePointLimit(MOST_CHARACTERS);
    options.setNestingDepthLimit(DEEPEST);
    Object root;
    try {
      root = new Yaml(new SafeConstructor(options)).load(text);
    } catch (MarkedYAMLException e) {
      String line = e.getProblemMark() == null ? "" : "line " + (e.getProblemMark().getLine() + 1);
      throw new CatalogueException(file, line, "not YAML: " + e.getProblem());
    } catch (YAMLException e) {
      throw new CatalogueException(file, "", "not YAML: " + e.getMessage());
    }
    return new YamlValue(file, "", root);
  }

  CatalogueException fault(String reason) {
    return new CatalogueException(file, path, reason);
  }

  String file() {
    return file;
  }

  boolean isNull() {
    return value == null;
  }

  boolean isText() {
    return value instanceof String;
  }

  boolean isNumber() {
    return value instanceof Number;
  }

  boolean isList() {
    return value instanceof List;
  }

  YamlValue need(String key) {
    return field(key).orElseThrow(() -> fault("`" + key + "` is missing"));
  }

  Optional<YamlValue> field(String key) {
    Map<?, ?> map = map();
    return map.containsKey(key) ? Optional.of(child(key, map.get(key))) : Optional.empty();
  }

  void requireKeys(Set<String> allowed) {
    for (Object key : map().keySet()) {
      if (!(key instanceof String) || !allowed.contains(key)) {
        throw fault("there is no key `" + key + "` here");
      }
    }
  }

  List<String> keys() {
    List<String> keys = new ArrayList<>();
    for (Object key : map().keySet()) {
      if (!(key instanceof String text)) {
        throw fault("a key must be a text, but was " + key);
      }
      keys.add(text);
    }
    return keys;
  }

  String text() {
    if (value instanceof String text && !text.isBlank()) {
      return text;
    }
    throw fault("a text is needed, but was " + value);
  }

  double number() {
    if (value instanceof Number number && Double.isFinite(number.doubleValue())) {
      return number.doubleValue();
    }
    throw fault("a number is needed, but was " + value);
  }

  boolean isTrue() {
    if (value instanceof Boolean flag) {
      return flag;
    }
    throw fault("true or false is needed, but was " + value);
  }

  /** Returns a list of two numbers, the smaller first. */
  double[] pair() {
    List<YamlValue> items = items();
    if (items.size() != 2) {
      throw fault("two numbers are needed, but there are " + items.size());
    }
    double low = items.get(0).number();
    double high = items.get(1).number();
    if (low > high) {
      throw fault("the smaller number must stand first, but was [" + low + ", " + high + "]");
    }
    return new double[] {low, high};
  }

  List<YamlValue> items() {
    if (!(value instanceof List<?> list)) {
      throw fault("a list is needed, but was " + value);
    }
    List<YamlValue> items = new ArrayList<>();
    for (Object item : list) {
      items.add(new YamlValue(file, path + "[" + items.size() + "]", item));
    }
    return items;
  }

  private YamlValue child(String key, @Nullable Object child) {
    return new YamlValue(file, path.isEmpty() ? key : path + "." + key, child);
  }

  private Map<?, ?> map() {
    if (value instanceof Map<?, ?> map) {
      return map;
    }
    throw fault("keys and values are needed, but was " + value);
  }
}
