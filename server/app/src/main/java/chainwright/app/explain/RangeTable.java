package chainwright.app.explain;

import chainwright.app.page.Block;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.catalogue.Citation;
import chainwright.notation.catalogue.RangeRow;
import chainwright.notation.catalogue.Setting;
import chainwright.notation.catalogue.SourceKind;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What is cautious, usual and extreme, kind of source by kind of source; keeps in mind which
 * sources of knowledge it names.
 */
final class RangeTable {

  private static final List<Block.Term> READING =
      List.of(
          new Block.Term(
              "cautious",
              "rarely does harm, whatever the recording; it may begin or end beyond the usual, on the"
                  + " side that does less"),
          new Block.Term("usual", "where most engineers stay on such a source"),
          new Block.Term(
              "extreme", "from there on the trade rarely goes; a finding asks for a note"));

  private final Catalogue catalogue;
  private final Map<String, Citation> cited = new LinkedHashMap<>();

  RangeTable(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /**
   * Writes the ranges of a setting.
   *
   * @param setting the setting
   * @param source the only kind of source that is meant; empty for all
   * @return a table and the notes on its rows; nothing if the setting has no ranges
   */
  List<Block> of(Setting setting, Optional<SourceKind> source) {
    List<RangeRow> rows = source.isEmpty() ? setting.rows() : rowsFor(setting, source.get());
    if (rows.isEmpty()) {
      return List.of();
    }
    List<List<String>> cells = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    for (RangeRow row : rows) {
      String whom = whom(row);
      row.range().sources().forEach(citation -> cited.put(citation.key(), citation));
      cells.add(
          List.of(
              whom,
              SettingText.cautious(setting, row.range()),
              SettingText.usual(setting, row.range()),
              SettingText.extreme(setting, row.range()),
              row.range().sources().stream().map(Citation::key).collect(Collectors.joining(" "))));
      if (!row.range().note().isEmpty()) {
        notes.add(whom + ": " + row.range().note());
      }
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Table(List.of("for", "cautious", "usual", "extreme", "source"), cells));
    if (!notes.isEmpty()) {
      blocks.add(new Block.Items(notes));
    }
    return blocks;
  }

  private static List<RangeRow> rowsFor(Setting setting, SourceKind source) {
    List<RangeRow> rows = new ArrayList<>();
    for (RangeRow.Direction direction : RangeRow.Direction.values()) {
      setting
          .range(Optional.of(source), direction)
          .ifPresent(
              range ->
                  setting.rows().stream()
                      .filter(row -> row.range().equals(range) && !rows.contains(row))
                      .forEach(rows::add));
    }
    return rows;
  }

  private String whom(RangeRow row) {
    String names =
        row.sources().isEmpty()
            ? "any"
            : catalogue.sources().stream()
                .map(SourceKind::word)
                .filter(row.sources()::contains)
                .collect(Collectors.joining(", "));
    return names + SettingText.direction(row);
  }

  /**
   * Says how the tables so far are to be read, and names their sources of knowledge in full.
   *
   * @return headings with what stands below them; nothing if there is no table
   */
  List<Block> sources() {
    if (cited.isEmpty()) {
      return List.of();
    }
    return List.of(
        new Block.Heading("How to read the ranges"),
        new Block.Terms(READING),
        new Block.Heading("Sources"),
        new Block.Terms(
            cited.values().stream()
                .map(citation -> new Block.Term(citation.key(), citation.spelt()))
                .toList()));
  }
}
