package chainwright.engine.rules;

import chainwright.engine.judge.Judge;
import chainwright.engine.judge.Judgement;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Lowered;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;
import java.util.List;

/**
 * A text and what was found in it.
 *
 * @param file the file
 * @param findings everything found
 */
record JudgedText(SourceFile file, List<Finding> findings) {

  private static final String KEY = "example.chain";

  static JudgedText of(String text) {
    SourceFile file = SourceFile.of(KEY, text, new SectionReader(Catalogue.load()));
    Judgement judgement =
        new Judge(Catalogue.load()).judge(new Project(List.of(file)), KEY, Judgement.NONE);
    return new JudgedText(file, judgement.findings());
  }

  String text() {
    return file.tree().text();
  }

  List<Finding> findings(String code) {
    return findings.stream().filter(finding -> finding.code().equals(code)).toList();
  }

  List<Finding> warnings() {
    return findings.stream()
        .filter(one -> one.severity() == Severity.WARNING || one.severity() == Severity.ERROR)
        .toList();
  }

  /** What is wrong with the text itself, rules left aside. */
  List<Finding> textFaults() {
    return file.sections().stream().map(Lowered::findings).flatMap(List::stream).toList();
  }

  /** The words at a place. */
  String words(Place place) {
    return place.section().text().substring(place.span().start(), place.span().end());
  }

  JudgedText with(Fix fix) {
    StringBuilder text = new StringBuilder();
    for (Section section : file.tree().sections()) {
      List<TextEdit> edits =
          fix.edits().stream()
              .filter(edit -> edit.section() == section)
              .map(PlacedEdit::edit)
              .toList();
      text.append(TextEdit.apply(section.text(), edits));
    }
    return of(text.toString());
  }

  /** Where a finding stands: line and columns, counted from 1, such as "4:3-9". */
  String where(Finding finding) {
    int index = file.tree().sections().indexOf(finding.place().section());
    int start = file.tree().startOf(index) + finding.place().span().start();
    String before = text().substring(0, start);
    long line = before.chars().filter(c -> c == '\n').count() + 1;
    int column = start - (before.lastIndexOf('\n') + 1) + 1;
    return line + ":" + column + "-" + (column + finding.place().span().length());
  }
}
