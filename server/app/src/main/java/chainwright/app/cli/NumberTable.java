package chainwright.app.cli;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Numbers in columns, such as a frequency and the gain there.
 *
 * @param columns what each column holds, its unit at the end of the name
 * @param rows the rows, each as long as there are columns
 */
record NumberTable(List<String> columns, List<List<Double>> rows) {

  NumberTable {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }

  /** Returns a column, from 0. */
  double[] column(int index) {
    return rows.stream().mapToDouble(row -> row.get(index)).toArray();
  }

  /**
   * Returns the table as comma-separated values.
   *
   * @return a line of names and a line a row (RFC 4180, with LF); each number has as many digits as
   *     it takes to read the same double again
   */
  String toCsv() {
    StringBuilder text = new StringBuilder(String.join(",", columns)).append('\n');
    for (List<Double> row : rows) {
      text.append(row.stream().map(String::valueOf).collect(Collectors.joining(","))).append('\n');
    }
    return text.toString();
  }
}
