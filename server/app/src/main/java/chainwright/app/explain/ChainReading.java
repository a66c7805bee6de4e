package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.app.page.Page;
import chainwright.app.view.Outline;
import chainwright.app.view.Part;
import chainwright.app.view.Readings;
import chainwright.app.view.StagePlots;
import chainwright.app.view.StageWords;
import chainwright.app.view.Unfinished;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.sound.SoundBuilder;
import chainwright.notation.lowering.Vocabulary;
import chainwright.notation.model.Clauses;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import chainwright.quantity.Frequency;
import chainwright.quantity.NumberText;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Reads a chain aloud, line by line, with the numbers that come of it.
 *
 * @param outline the chain
 * @param scope what its names mean
 */
public record ChainReading(Outline outline, Scope scope) {

  private static final String APPLY = "apply ";

  /** The preferred frequencies of octave bands [Hz]. Source: ISO 266:1997, from memory. */
  private static final double[] OCTAVES = {31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16_000};

  /**
   * Reads the chain.
   *
   * @return the page
   */
  public Page page() {
    List<Block> blocks = new ArrayList<>();
    String facts = new ChainFacts(outline.path()).sentence();
    if (!facts.isEmpty()) {
      blocks.add(new Block.Paragraph(facts));
    }
    blocks.addAll(said(outline.path().track().clauses()));
    Set<String> introduced = new HashSet<>();
    for (Part part : outline.all()) {
      blocks.add(new Block.Step(part.number(), part.depth(), head(part), body(part, introduced)));
    }
    if (outline.parts().isEmpty()) {
      blocks.add(new Block.Paragraph("Nothing is done to it."));
    }
    blocks.addAll(listening());
    blocks.addAll(whole());
    String name = outline.path().track().name().text();
    String title = outline.path().track().title();
    return new Page(title.isEmpty() ? name : name + ": " + title, blocks);
  }

  /**
   * Says how a line is headed.
   *
   * @param part the line
   * @return what is written there, without its notes
   */
  static String head(Part part) {
    return part.stage().map(StagePlots::title).orElse(part.words())
        + part.label().map(label -> ", called " + label).orElse("")
        + (part.isBypassed() ? " (bypassed)" : "");
  }

  private List<Block> body(Part part, Set<String> introduced) {
    List<Block> body = new ArrayList<>();
    if (part.stage().isPresent()) {
      StageElement stage = part.stage().get();
      String general = introduced.add(stage.word()) ? stage.stage().kind().says() + " " : "";
      String words = StageWords.of(stage, outline.nominal());
      body.add(
          new Block.Paragraph(
              words.equals(stage.stage().kind().says())
                  ? words
                  : general + "Here: " + words + "."));
    } else {
      body.add(new Block.Paragraph(structure(part) + here(part)));
    }
    body.addAll(said(part.clauses()));
    return body;
  }

  /** What a structure is, said by its first word. */
  private String structure(Part part) {
    String word = part.words().split(" ", 2)[0];
    Optional<String> title = preset(part).map(Definition.Preset::title);
    return title
        .filter(text -> !text.isEmpty())
        .or(() -> Vocabulary.find(word).map(Vocabulary.Keyword::says))
        .orElse("");
  }

  private Optional<Definition.Preset> preset(Part part) {
    return part.words().startsWith(APPLY)
        ? scope.preset(part.words().substring(APPLY.length()))
        : Optional.empty();
  }

  /** Why nothing is computed of a structure, behind what it is; empty text where something is. */
  private String here(Part part) {
    if (part.words().startsWith(APPLY) && preset(part).isEmpty()) {
      return " Here: nothing, because no preset has this name.";
    }
    return part.elements().stream()
        .filter(SplitElement.class::isInstance)
        .map(SplitElement.class::cast)
        .filter(split -> !part.words().startsWith(APPLY) && !split.unread().isEmpty())
        .findFirst()
        .map(split -> " Here: " + Unfinished.inWords(split) + ".")
        .orElse("");
  }

  /** The rules that are broken on purpose, and the notes. */
  static List<Block> said(Clauses clauses) {
    List<Block> blocks = new ArrayList<>();
    clauses
        .deliberates()
        .forEach(
            one ->
                blocks.add(
                    new Block.Paragraph(
                        "Breaks `"
                            + one.rule().text()
                            + "` on purpose: "
                            + one.reason()
                            + (one.reason().matches(".*[.!?]") ? "" : "."))));
    clauses.notes().forEach(note -> blocks.add(new Block.Quote(note.text())));
    return blocks;
  }

  private List<Block> listening() {
    List<Declarations.Listen> listens = outline.path().track().declarations().listens();
    if (listens.isEmpty()) {
      return List.of();
    }
    return List.of(
        new Block.Heading("Where to listen"),
        new Block.Terms(
            listens.stream()
                .map(
                    one ->
                        new Block.Term(
                            ChainFacts.clock(one.from())
                                + one.to().map(to -> " to " + ChainFacts.clock(to)).orElse(""),
                            one.cue()))
                .toList()));
  }

  private List<Block> whole() {
    double latencyMs = SoundBuilder.latencySeconds(outline.path()) * 1000;
    List<String> heads = new ArrayList<>(List.of("Hz"));
    List<String> gains = new ArrayList<>(List.of("dB"));
    for (double hertz : OCTAVES) {
      if (hertz < outline.path().rate().nyquist().hertz()) {
        heads.add(hertz < 1000 ? NumberText.format(hertz) : NumberText.format(hertz / 1000) + "k");
        double decibels = outline.path().response().decibelsAt(hertz);
        gains.add(Double.isFinite(decibels) ? Readings.gain(decibels).replace(" dB", "") : "none");
      }
    }
    return List.of(
        new Block.Heading("All of it together"),
        new Block.Paragraph(
            "Gain with dynamics at rest, passages left out; latency "
                + NumberText.format(latencyMs, 2)
                + " ms at a sample rate of "
                + Frequency.ofHertz(outline.path().rate().hertz())
                + "."
                + Unfinished.leftOut(outline.path().elements()).map(out -> " " + out).orElse("")),
        new Block.Table(heads, List.of(gains)));
  }
}
