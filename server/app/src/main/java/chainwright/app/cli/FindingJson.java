package chainwright.app.cli;

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
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Findings for programs. Lines and columns count from 1, a column is a code point. */
final class FindingJson {

  private static final Gson GSON =
      new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();

  private FindingJson() {}

  static String of(List<Path> files, List<FoundFinding> found) {
    JsonObject all = new JsonObject();
    JsonArray names = new JsonArray();
    files.forEach(file -> names.add(file.toString()));
    all.add("files", names);
    JsonObject counts = new JsonObject();
    for (Severity severity : Severity.values()) {
      counts.addProperty(
          word(severity),
          found.stream().filter(one -> one.finding().severity() == severity).count());
    }
    all.add("counts", counts);
    JsonArray findings = new JsonArray();
    found.forEach(one -> findings.add(of(one)));
    all.add("findings", findings);
    return GSON.toJson(all);
  }

  private static JsonObject of(FoundFinding found) {
    Finding finding = found.finding();
    JsonObject object = new JsonObject();
    object.addProperty("code", finding.code());
    object.addProperty("severity", word(finding.severity()));
    place(object, found, finding.place());
    object.addProperty("what", finding.what());
    object.addProperty("why", finding.why());
    object.addProperty("do", finding.remedy());
    JsonArray sources = new JsonArray();
    finding.sources().forEach(sources::add);
    object.add("sources", sources);
    JsonArray related = new JsonArray();
    for (Finding.Related one : finding.related()) {
      JsonObject part = new JsonObject();
      place(part, found, one.place());
      part.addProperty("what", one.what());
      related.add(part);
    }
    object.add("related", related);
    JsonArray fixes = new JsonArray();
    finding.fixes().forEach(fix -> fixes.add(of(fix, found)));
    object.add("fixes", fixes);
    return object;
  }

  private static JsonObject of(Fix fix, FoundFinding found) {
    JsonObject object = new JsonObject();
    object.addProperty("title", fix.title());
    object.addProperty("keepsTheSound", fix.effect() == Fix.Effect.KEEPS_THE_SOUND);
    object.addProperty("preferred", fix.isPreferred());
    JsonArray edits = new JsonArray();
    for (PlacedEdit edit : fix.edits()) {
      JsonObject one = new JsonObject();
      place(one, found, new Place(edit.section(), edit.edit().span()));
      one.addProperty("text", edit.edit().newText());
      edits.add(one);
    }
    object.add("edits", edits);
    return object;
  }

  private static void place(JsonObject object, FoundFinding found, Place place) {
    found.finder().find(place).ifPresent(at -> place(object, found, at));
  }

  private static void place(JsonObject object, FoundFinding found, Workspace.Located at) {
    boolean isHere = at.document().equals(found.document());
    object.addProperty("file", isHere ? found.file().toString() : at.document().path().key());
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
