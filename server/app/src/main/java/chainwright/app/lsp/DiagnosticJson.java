package chainwright.app.lsp;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonSerializationContext;
import com.google.gson.JsonSerializer;
import java.lang.reflect.Type;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticRelatedInformation;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;

/** Writes a diagnostic by hand: every start has some. */
final class DiagnosticJson implements JsonSerializer<Diagnostic> {

  @Override
  public JsonElement serialize(Diagnostic diagnostic, Type type, JsonSerializationContext context) {
    return of(diagnostic);
  }

  /** Writes a diagnostic as {@link FoundDiagnostics} makes it: its message is plain text. */
  static JsonObject of(Diagnostic diagnostic) {
    JsonObject json = new JsonObject();
    json.add("range", of(diagnostic.getRange()));
    json.addProperty("severity", diagnostic.getSeverity().getValue());
    json.addProperty("code", diagnostic.getCode().getLeft());
    if (diagnostic.getCodeDescription() != null) {
      JsonObject description = new JsonObject();
      description.addProperty("href", diagnostic.getCodeDescription().getHref());
      json.add("codeDescription", description);
    }
    json.addProperty("source", diagnostic.getSource());
    json.addProperty("message", diagnostic.getMessage().getLeft());
    if (diagnostic.getRelatedInformation() != null) {
      JsonArray related = new JsonArray();
      diagnostic.getRelatedInformation().forEach(one -> related.add(of(one)));
      json.add("relatedInformation", related);
    }
    return json;
  }

  private static JsonObject of(DiagnosticRelatedInformation related) {
    JsonObject location = new JsonObject();
    location.addProperty("uri", related.getLocation().getUri());
    location.add("range", of(related.getLocation().getRange()));
    JsonObject json = new JsonObject();
    json.add("location", location);
    json.addProperty("message", related.getMessage());
    return json;
  }

  private static JsonObject of(Range range) {
    JsonObject json = new JsonObject();
    json.add("start", of(range.getStart()));
    json.add("end", of(range.getEnd()));
    return json;
  }

  private static JsonObject of(Position position) {
    JsonObject json = new JsonObject();
    json.addProperty("line", position.getLine());
    json.addProperty("character", position.getCharacter());
    return json;
  }
}
