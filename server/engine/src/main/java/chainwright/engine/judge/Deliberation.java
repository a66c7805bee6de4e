package chainwright.engine.judge;

import chainwright.engine.rules.RuleBook;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.fault.Fault;
import chainwright.notation.lowering.Nearest;
import chainwright.notation.model.Branch;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Definition;
import chainwright.notation.model.Deliberate;
import chainwright.notation.model.Step;
import chainwright.notation.project.Scope;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import chainwright.notation.text.TextSpan;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Which rules an author breaks on purpose, where, and whether that silences anything. */
final class Deliberation {

  /** A deliberate rule and the lines it speaks for. */
  private record Claim(Section section, Deliberate deliberate, TextSpan covers, boolean isOwn) {

    boolean silences(Finding finding) {
      return finding.code().equals(deliberate.rule().text())
          && finding.place().section() == section
          && covers.contains(finding.place().span());
    }
  }

  private final List<Claim> claims = new ArrayList<>();

  private Deliberation() {}

  static Deliberation of(Definition.Track track, Scope scope) {
    Deliberation deliberation = new Deliberation();
    deliberation.add(track.section(), track.clauses(), track.lineSpan());
    deliberation.addSteps(track.section(), track.steps());
    deliberation.addPresets(track.section(), track.steps(), scope, new HashSet<>());
    return deliberation;
  }

  static Deliberation of(Definition.Preset preset) {
    Deliberation deliberation = new Deliberation();
    deliberation.add(preset.section(), preset.clauses(), preset.lineSpan());
    deliberation.addSteps(preset.section(), preset.steps());
    return deliberation;
  }

  private void add(Section section, Clauses clauses, TextSpan covers) {
    clauses.deliberates().forEach(one -> claims.add(new Claim(section, one, covers, true)));
  }

  private void addSteps(Section section, List<Step> steps) {
    for (Step step : steps) {
      add(section, step.clauses(), step.lineSpan());
      for (Branch branch : step.branches()) {
        add(section, branch.clauses(), branch.lineSpan());
        addSteps(section, branch.steps());
      }
    }
  }

  /** What a preset calls deliberate also holds on the line that applies it. */
  private void addPresets(Section section, List<Step> steps, Scope scope, Set<String> seen) {
    for (Step step : steps) {
      if (step instanceof Step.Apply apply) {
        addPreset(section, apply, apply.preset().text(), scope, seen);
      }
      step.branches().forEach(branch -> addPresets(section, branch.steps(), scope, seen));
    }
  }

  private void addPreset(
      Section section, Step.Apply apply, String name, Scope scope, Set<String> seen) {
    if (!seen.add(name)) {
      return;
    }
    scope
        .preset(name)
        .ifPresent(
            preset -> {
              Deliberation inner = of(preset);
              inner.claims.forEach(
                  claim ->
                      claims.add(new Claim(section, claim.deliberate(), apply.lineSpan(), false)));
            });
    seen.remove(name);
  }

  /** Returns the findings that are not silenced, and those about the deliberate clauses. */
  List<Finding> weigh(List<Finding> found) {
    List<Finding> kept = new ArrayList<>();
    Set<Claim> used = new HashSet<>();
    for (Finding finding : found) {
      boolean isSilenced = false;
      for (Claim claim : claims) {
        if (claim.silences(finding)) {
          isSilenced = true;
          used.add(claim);
        }
      }
      if (!isSilenced) {
        kept.add(finding);
      }
    }
    kept.addAll(unknownRules());
    for (Claim claim : claims) {
      boolean isKnown = RuleBook.find(claim.deliberate().rule().text()).isPresent();
      if (isKnown && claim.isOwn() && !used.contains(claim)) {
        kept.add(idle(claim));
      }
    }
    return kept;
  }

  /** Returns a finding for each clause that names no rule. */
  List<Finding> unknownRules() {
    List<Finding> findings = new ArrayList<>();
    for (Claim claim : claims) {
      String code = claim.deliberate().rule().text();
      if (claim.isOwn() && RuleBook.find(code).isEmpty()) {
        boolean isFault = Fault.find(code).isPresent();
        List<String> near =
            isFault
                ? List.of()
                : Nearest.to(
                    code, RuleBook.all().stream().map(rule -> rule.card().code()).toList());
        findings.add(
            Finding.ofText(
                Fault.UNKNOWN_RULE,
                new Place(claim.section(), claim.deliberate().rule().span()),
                "there is no rule `"
                    + code
                    + "`"
                    + (isFault ? "; that is a fault of the text" : ""),
                "",
                isFault
                    ? "Mend what it speaks of, and remove this clause."
                    : near.isEmpty()
                        ? "Write the code that stands beside the finding."
                        : "Did you mean `" + String.join("` or `", near) + "`?",
                List.of(),
                near.stream().map(one -> rename(claim, one)).toList()));
      }
    }
    return findings;
  }

  private static Fix rename(Claim claim, String code) {
    return new Fix(
        "Write `" + code + "`",
        Fix.Effect.KEEPS_THE_SOUND,
        false,
        List.of(
            new PlacedEdit(claim.section(), new TextEdit(claim.deliberate().rule().span(), code))));
  }

  private static Finding idle(Claim claim) {
    TextSpan span = claim.deliberate().span();
    return Finding.ofText(
        Fault.DELIBERATE_SILENCES_NOTHING,
        new Place(claim.section(), span),
        "`" + claim.deliberate().rule().text() + "` finds nothing here to silence",
        "A clause that silences nothing hides the next fault on this line.",
        "Remove it.",
        List.of(),
        List.of(
            new Fix(
                "Remove the clause",
                Fix.Effect.KEEPS_THE_SOUND,
                true,
                List.of(new PlacedEdit(claim.section(), new TextEdit(withBlank(claim), ""))))));
  }

  /** The clause with the blanks before it. */
  private static TextSpan withBlank(Claim claim) {
    String text = claim.section().text();
    int start = claim.deliberate().span().start();
    while (start > 0 && (text.charAt(start - 1) == ' ' || text.charAt(start - 1) == '\t')) {
      start--;
    }
    return new TextSpan(start, claim.deliberate().span().end());
  }
}
