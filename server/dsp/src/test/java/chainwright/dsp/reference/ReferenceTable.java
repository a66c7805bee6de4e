package chainwright.dsp.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A table of reference numbers: a CSV resource with a header; lines that begin with # are notes.
 */
public final class ReferenceTable {

  private ReferenceTable() {}

  /** One line of a table. */
  public record Row(Map<String, String> cells) {

    /** Returns a number of the row; `inf` and `-inf` are the infinities. */
    public double number(String column) {
      String cell = text(column);
      return switch (cell) {
        case "inf" -> Double.POSITIVE_INFINITY;
        case "-inf" -> Double.NEGATIVE_INFINITY;
        default -> Double.parseDouble(cell);
      };
    }

    /** Returns a cell as it is written. */
    public String text(String column) {
      String cell = cells.get(column);
      if (cell == null) {
        throw new IllegalArgumentException("no column `" + column + "` in " + cells.keySet());
      }
      return cell;
    }
  }

  /** Reads a resource beside the class. */
  public static List<Row> read(Class<?> beside, String name) {
    try (InputStream stream = beside.getResourceAsStream(name)) {
      assertThat(stream).as(name).isNotNull();
      BufferedReader reader =
          new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
      List<String> lines = reader.lines().filter(line -> !line.startsWith("#")).toList();
      String[] columns = lines.get(0).split(",", -1);
      List<Row> rows = lines.stream().skip(1).map(line -> row(columns, line)).toList();
      assertThat(rows).as(name).isNotEmpty();
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Row row(String[] columns, String line) {
    String[] cells = line.split(",", -1);
    Map<String, String> byColumn = new HashMap<>();
    for (int i = 0; i < columns.length; i++) {
      byColumn.put(columns[i], cells[i]);
    }
    return new Row(Map.copyOf(byColumn));
  }
}
