package chainwright.app.page;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.List;

/** Writes pages for programs: each a title, and blocks that each say their kind. */
public record JsonPage() implements Block.Visitor<JsonObject> {

  private static final int VERSION = 1;

  /**
   * Writes pages.
   *
   * @param pages the pages
   * @return one object, ended by LF
   */
  public String render(List<Page> pages) {
    JsonObject object = new JsonObject();
    object.addProperty("version", VERSION);
    JsonArray array = new JsonArray();
    for (Page page : pages) {
      JsonObject one = new JsonObject();
      one.addProperty("title", page.title());
      one.add("blocks", blocks(page.blocks()));
      array.add(one);
    }
    object.add("pages", array);
    return new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create().toJson(object)
        + "\n";
  }

  private JsonArray blocks(List<Block> blocks) {
    JsonArray array = new JsonArray();
    blocks.forEach(block -> array.add(block.accept(this)));
    return array;
  }

  @Override
  public JsonObject visitHeading(Block.Heading heading) {
    return object("heading", "text", heading.text());
  }

  @Override
  public JsonObject visitParagraph(Block.Paragraph paragraph) {
    return object("paragraph", "text", paragraph.text());
  }

  @Override
  public JsonObject visitItems(Block.Items items) {
    JsonObject object = object("list");
    object.add("items", texts(items.texts()));
    return object;
  }

  @Override
  public JsonObject visitTerms(Block.Terms terms) {
    JsonObject object = object("terms");
    JsonArray array = new JsonArray();
    for (Block.Term term : terms.terms()) {
      JsonObject one = new JsonObject();
      one.addProperty("word", term.word());
      one.addProperty("meaning", term.meaning());
      array.add(one);
    }
    object.add("terms", array);
    return object;
  }

  @Override
  public JsonObject visitTable(Block.Table table) {
    JsonObject object = object("table");
    object.add("heads", texts(table.heads()));
    JsonArray rows = new JsonArray();
    table.rows().forEach(row -> rows.add(texts(row)));
    object.add("rows", rows);
    return object;
  }

  @Override
  public JsonObject visitCode(Block.Code code) {
    JsonObject object = object("code");
    object.add("lines", texts(code.lines()));
    return object;
  }

  @Override
  public JsonObject visitQuote(Block.Quote quote) {
    return object("quote", "text", quote.text());
  }

  @Override
  public JsonObject visitStep(Block.Step step) {
    JsonObject object = object("step", "number", step.number());
    object.addProperty("head", step.head());
    object.add("body", blocks(step.body()));
    return object;
  }

  private static JsonArray texts(List<String> texts) {
    JsonArray array = new JsonArray();
    texts.forEach(array::add);
    return array;
  }

  private static JsonObject object(String kind) {
    JsonObject object = new JsonObject();
    object.addProperty("kind", kind);
    return object;
  }

  private static JsonObject object(String kind, String name, String text) {
    JsonObject object = object(kind);
    object.addProperty(name, text);
    return object;
  }
}
