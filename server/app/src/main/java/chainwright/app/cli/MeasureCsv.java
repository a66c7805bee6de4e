package chainwright.app.cli;

import chainwright.app.report.MeasuredRecording;
import java.util.ArrayList;
import java.util.List;

/**
 * Readings as comma-separated values (RFC 4180, with LF), a line a channel, with all digits. What
 * holds of the whole recording stands in each of its lines. Silence is {@code -Infinity}; a cell is
 * empty where there is no reading.
 */
final class MeasureCsv {

  private MeasureCsv() {}

  static String of(List<MeasuredRecording> measured) {
    StringBuilder text = new StringBuilder();
    for (MeasuredRecording recording : measured) {
      for (int c = 0; c < recording.positions().size(); c++) {
        List<MeasureNumber> numbers = new ArrayList<>(MeasureNumber.whole(recording));
        numbers.addAll(MeasureNumber.channel(recording, c));
        if (text.isEmpty()) {
          text.append("file,channel");
          numbers.forEach(number -> text.append(',').append(number.name()));
          text.append('\n');
        }
        text.append(quoted(recording.file().toString())).append(',');
        text.append(quoted(recording.channelName(c)));
        numbers.forEach(number -> text.append(',').append(cell(number)));
        text.append('\n');
      }
    }
    return text.toString();
  }

  private static String cell(MeasureNumber number) {
    if (Double.isNaN(number.value())) {
      return "";
    }
    return number.isWhole()
        ? String.valueOf((long) number.value())
        : String.valueOf(number.value());
  }

  private static String quoted(String text) {
    return text.matches("(?s).*[,\"\\r\\n].*") ? '"' + text.replace("\"", "\"\"") + '"' : text;
  }
}
