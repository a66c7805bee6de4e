package chainwright.engine.rules;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The rules that are in force. */
public final class RuleBook {

  private static final Map<String, Rule> RULES = byCode(RuleList.ALL);

  private RuleBook() {}

  /**
   * Returns the rules.
   *
   * @return all of them, in the order of their list
   */
  public static List<Rule> all() {
    return RuleList.ALL;
  }

  /**
   * Finds a rule.
   *
   * @param code its code
   * @return the rule, or empty
   */
  public static Optional<Rule> find(String code) {
    return Optional.ofNullable(RULES.get(code));
  }

  private static Map<String, Rule> byCode(List<Rule> rules) {
    Map<String, Rule> map = new LinkedHashMap<>();
    rules.forEach(rule -> map.put(rule.card().code(), rule));
    return map;
  }
}
