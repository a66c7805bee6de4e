package chainwright.dsp.filter;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/** A table of reference numbers from the test resources, see ORIGIN.md there. */
record ReferenceTable(List<String> columns, List<List<Double>> rows) {

  static ReferenceTable read(String path) {
    try (InputStream in = ReferenceTable.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new IllegalArgumentException("there is no resource " + path);
      }
      List<String> lines =
          new String(in.readAllBytes(), UTF_8).lines().filter(l -> !l.startsWith("#")).toList();
      List<List<Double>> rows = new ArrayList<>();
      for (String line : lines.subList(1, lines.size())) {
        rows.add(List.of(line.split(",", -1)).stream().map(Double::valueOf).toList());
      }
      return new ReferenceTable(List.of(lines.get(0).split(",", -1)), rows);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  double[] column(String name) {
    int index = columns.indexOf(name);
    return rows.stream().mapToDouble(row -> row.get(index)).toArray();
  }
}
