package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.app.page.Page;
import chainwright.engine.rules.RuleBook;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Family;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.catalogue.StageKind;
import chainwright.notation.lowering.Vocabulary;
import chainwright.quantity.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * What can be explained, in groups.
 *
 * @param catalogue the trade's knowledge
 */
record IndexPage(Catalogue catalogue) {

  Page page() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Heading("Stages, by what they are for"));
    blocks.add(new Block.Terms(stages()));
    blocks.add(new Block.Heading("Kinds of source"));
    blocks.add(
        new Block.Paragraph(
            catalogue.sources().stream().map(SourceKind::word).collect(Collectors.joining(", "))));
    blocks.add(new Block.Heading("Rules"));
    blocks.add(
        new Block.Terms(
            RuleBook.all().stream()
                .map(rule -> new Block.Term(rule.card().code(), rule.card().title()))
                .toList()));
    blocks.add(new Block.Heading("Faults of the text"));
    blocks.add(
        new Block.Terms(
            FindingPage.faults().stream()
                .map(fault -> new Block.Term(fault.code(), FindingPage.of(fault).title()))
                .toList()));
    blocks.add(new Block.Heading("Words of the notation"));
    blocks.add(
        new Block.Paragraph(
            Vocabulary.all().stream()
                .map(Vocabulary.Keyword::text)
                .collect(Collectors.joining(", "))));
    blocks.add(new Block.Heading("Units"));
    blocks.add(
        new Block.Paragraph(
            Arrays.stream(Unit.values()).map(Unit::symbol).collect(Collectors.joining(", "))));
    blocks.add(new Block.Heading("Settings"));
    blocks.add(
        new Block.Paragraph(
            "Any of them by its name, such as `ratio`, or with its stage: `compressor ratio`."));
    blocks.add(new Block.Heading("Chains"));
    blocks.add(new Block.Paragraph("The name of a file reads its chains aloud."));
    return new Page("What can be explained", blocks);
  }

  private List<Block.Term> stages() {
    List<Block.Term> terms = new ArrayList<>();
    for (Family family : Family.values()) {
      String words =
          catalogue.stages().stream()
              .filter(stage -> stage.family() == family)
              .map(StageKind::word)
              .collect(Collectors.joining(", "));
      if (!words.isEmpty()) {
        terms.add(new Block.Term(family.name().toLowerCase(Locale.ROOT), words));
      }
    }
    return terms;
  }
}
