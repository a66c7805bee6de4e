package chainwright.app.assist;

import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.Project;
import chainwright.notation.project.SourceFile;
import java.util.ArrayList;
import java.util.List;

/**
 * Files written with marks: {@code |} is the caret, {@code *name*} where a name is given, {@code
 * [name]} where it is used; {@code ~} ends a line, and {@code @key} begins the next file.
 *
 * @param project the files without their marks
 * @param at the file with the caret
 * @param caret where the caret stands in it
 * @param marks the marks as {@code key:start-end}, a star before those of given names
 */
record MarkedFiles(Project project, SourceFile at, int caret, List<String> marks) {

  static MarkedFiles of(String text) {
    List<SourceFile> files = new ArrayList<>();
    List<String> marks = new ArrayList<>();
    SourceFile at = null;
    int caret = -1;
    for (String part : (text.startsWith("@") ? text : "@a~" + text).substring(1).split("@", -1)) {
      int line = part.indexOf('~');
      String key = part.substring(0, line);
      StringBuilder plain = new StringBuilder();
      int open = -1;
      boolean isHere = false;
      for (char c : part.substring(line + 1).replace('~', '\n').toCharArray()) {
        if (c == '|') {
          caret = plain.length();
          isHere = true;
        } else if ("*[]".indexOf(c) < 0) {
          plain.append(c);
        } else if (open < 0) {
          open = plain.length();
        } else {
          marks.add((c == '*' ? "*" : "") + key + ":" + open + "-" + plain.length());
          open = -1;
        }
      }
      SourceFile file = SourceFile.of(key, plain.toString(), new SectionReader(Catalogue.load()));
      files.add(file);
      at = isHere ? file : at;
    }
    if (at == null) {
      throw new IllegalArgumentException("no caret in " + text);
    }
    return new MarkedFiles(new Project(files), at, caret, marks);
  }
}
