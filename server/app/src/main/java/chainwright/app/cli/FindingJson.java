package chainwright.app.cli;

import chainwright.app.workspace.Findings;
import chainwright.app.workspace.Workspace;
import chainwright.notation.diagnostic.Finding;
import chainwright.notation.diagnostic.Fix;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.diagnostic.PlacedEdit;
import chainwright.notation.diagnostic.Severity;
import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.Locale;

/**
 * Findings for programs. Lines and columns count from 1, a column is a code point; the help of
 * {@code check} describes the whole. What a version has keeps its name and meaning; more may come.
 */
final class FindingJson {

  private static final Gson GSON =
      new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();

  private static final int VERSION = 1;

  private FindingJson() {}

  static String of(List<CheckedFile> files) {
    JsonObject all = new JsonObject();
    all.addProperty("version", VERSION);
    JsonArray names = new JsonArray();
    files.forEach(file -> names.add(file.file().toString()));
    all.add("files", names);
    JsonObject counts = new JsonObject();
    for (Severity severity : Severity.values()) {
      counts.addProperty(
          word(severity),
          files.stream()
              .flatMap(file -> file.findings().found().stream())
              .filter(one -> one.finding().severity() == severity)
              .count());
    }
    all.add("counts", counts);
    JsonArray findings = new JsonArray();
    for (CheckedFile file : files) {
      file.findings().found().forEach(one -> findings.add(of(file, one)));
    }
    all.add("findings", findings);
    return GSON.toJson(all);
  }

  private static JsonObject of(CheckedFile file, Findings.Found found) {
    Finding finding = found.finding();
    JsonObject object = new JsonObject();
    object.addProperty("code", finding.code());
    object.addProperty("severity", word(finding.severity()));
    place(object, file, found.at());
    object.addProperty("what", finding.what());
    object.addProperty("why", finding.why());
    object.addProperty("do", finding.remedy());
    JsonArray sources = new JsonArray();
    finding.sources().forEach(sources::add);
    object.add("sources", sources);
    JsonArray related = new JsonArray();
    for (Finding.Related one : finding.related()) {
      JsonObject part = new JsonObject();
      place(part, file, one.place());
      part.addProperty("what", one.what());
      related.add(part);
    }
    object.add("related", related);
    JsonArray fixes = new JsonArray();
    finding.fixes().forEach(fix -> fixes.add(of(fix, file)));
    object.add("fixes", fixes);
    return object;
  }

  private static JsonObject of(Fix fix, CheckedFile file) {
    JsonObject object = new JsonObject();
    object.addProperty("title", fix.title());
    object.addProperty("keepsTheSound", fix.effect() == Fix.Effect.KEEPS_THE_SOUND);
    object.addProperty("preferred", fix.isPreferred());
    JsonArray edits = new JsonArray();
    for (PlacedEdit edit : fix.edits()) {
      JsonObject one = new JsonObject();
      place(one, file, new Place(edit.section(), edit.edit().span()));
      one.addProperty("text", edit.edit().newText());
      edits.add(one);
    }
    object.add("edits", edits);
    return object;
  }

  private static void place(JsonObject object, CheckedFile file, Place place) {
    file.find(place).ifPresent(at -> place(object, file, at));
  }

  private static void place(JsonObject object, CheckedFile file, Workspace.Located at) {
    object.addProperty(
        "file", file.holds(at) ? file.file().toString() : at.document().path().key());
    CountedPlace start = CountedPlace.of(at.document(), at.span().start());
    CountedPlace end = CountedPlace.of(at.document(), at.span().end());
    object.addProperty("line", start.line());
    object.addProperty("column", start.column());
    object.addProperty("endLine", end.line());
    object.addProperty("endColumn", end.column());
  }

  private static String word(Severity severity) {
    return severity.name().toLowerCase(Locale.ROOT);
  }
}
