package chainwright.app.cli;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Numbers in columns, such as a frequency and the gain there.
 *
 * @param columns what each column holds
 * @param rows the rows, each as long as there are columns
 */
record NumberTable(List<Column> columns, List<List<Double>> rows) {

  /**
   * What a column holds.
   *
   * @param name its name, with the unit at its end
   * @param unit the unit, or empty text for a plain number
   * @param is what its numbers are, one sentence
   */
  record Column(String name, String unit, String is) {}

  NumberTable {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }

  /**
   * Returns the table as comma-separated values.
   *
   * @return a line of names and a line a row (RFC 4180, with LF); each number has as many digits as
   *     it takes to read the same double again
   */
  String toCsv() {
    StringBuilder text = new StringBuilder();
    text.append(columns.stream().map(Column::name).collect(Collectors.joining(","))).append('\n');
    for (List<Double> row : rows) {
      text.append(row.stream().map(String::valueOf).collect(Collectors.joining(","))).append('\n');
    }
    return text.toString();
  }
}
