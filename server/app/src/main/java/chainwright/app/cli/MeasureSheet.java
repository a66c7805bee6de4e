package chainwright.app.cli;

import chainwright.app.page.Wrapping;
import chainwright.app.report.Cautions;
import chainwright.app.report.Clock;
import chainwright.app.report.MeasuredRecording;
import chainwright.dsp.loudness.ChannelLevels;
import chainwright.dsp.loudness.LoudnessReading;
import chainwright.dsp.loudness.SignalReading;
import chainwright.dsp.loudness.TruePeakReading;
import chainwright.quantity.Frequency;
import java.util.Locale;

/** Readings for people: what holds of the whole, then a line a channel, then what to beware of. */
final class MeasureSheet {

  private static final int WIDTH = 80;
  private static final String INDENT = "  ";

  /** −120 dBFS, below which an offset is none. */
  private static final double SMALLEST_OFFSET = 1e-6;

  private MeasureSheet() {}

  static String of(MeasuredRecording recording) {
    StringBuilder text = new StringBuilder();
    SignalReading reading = recording.reading();
    text.append(recording.file()).append('\n');
    text.append("  ").append(kind(recording)).append("\n\n");
    whole(text, reading);
    text.append('\n');
    line(text, "channel", "true", "more", "sample", "RMS", "crest", "offset", "noise");
    line(text, "", "peak", "finely", "peak", "level", "factor", "", "floor");
    line(text, "", "dBTP", "dBTP", "dBFS", "dBFS", "dB", "dBFS", "dBFS");
    for (int c = 0; c < reading.levels().size(); c++) {
      channel(text, recording.channelName(c), reading.truePeaks().get(c), reading.levels().get(c));
    }
    if (!recording.saysItsPositions()) {
      text.append("\n  The file does not say what its channels are for; these are usual.\n");
    }
    for (String caution : Cautions.of(recording)) {
      text.append('\n');
      Wrapping.lines("Caution: " + caution + ".", WIDTH - INDENT.length())
          .forEach(line -> text.append(INDENT).append(line).append('\n'));
    }
    return text.toString();
  }

  private static String kind(MeasuredRecording recording) {
    int channels = recording.format().channels();
    return String.join(
        ", ",
        recording.format().file().label(),
        Frequency.ofHertz(recording.format().sampleRateHz()).toString(),
        recording.format().samples().toString(),
        channels + (channels == 1 ? " channel" : " channels"),
        Clock.of(recording.seconds()));
  }

  private static void whole(StringBuilder text, SignalReading reading) {
    LoudnessReading loudness = reading.loudness();
    whole(text, "integrated loudness", loudness.integratedLufs(), " LUFS");
    whole(text, "loudest 3 s (short-term)", loudness.shortTermMaxLufs(), " LUFS");
    whole(text, "loudest 0.4 s (momentary)", loudness.momentaryMaxLufs(), " LUFS");
    whole(text, "loudness range", loudness.rangeLu(), " LU  ");
    if (reading.levels().size() > 1) {
      whole(text, "correlation of the first two", reading.correlation(), "     ");
    }
  }

  private static void whole(StringBuilder text, String name, double value, String unit) {
    String number = Double.isFinite(value) ? number(value, 2) + unit : number(value, 2) + "     ";
    text.append(String.format(Locale.ROOT, "  %-34s%12s", name, number).stripTrailing())
        .append('\n');
  }

  private static void channel(
      StringBuilder text, String name, TruePeakReading peak, ChannelLevels levels) {
    line(
        text,
        name,
        number(peak.annex2Dbtp(), 2),
        number(peak.fineDbtp(), 2),
        number(levels.samplePeakDbfs(), 2),
        number(levels.rmsDbfs(), 2),
        number(levels.crestDb(), 1),
        offset(levels.offsetAmplitude()),
        number(levels.noiseFloorDbfs(), 1));
  }

  private static String offset(double amplitude) {
    return Math.abs(amplitude) < SMALLEST_OFFSET
        ? "none"
        : number(20 * Math.log10(Math.abs(amplitude)), 1);
  }

  private static void line(StringBuilder text, Object... cells) {
    text.append(String.format(Locale.ROOT, "  %-18s%8s%8s%9s%9s%7s%10s%9s", cells).stripTrailing())
        .append('\n');
  }

  private static String number(double value, int decimals) {
    if (Double.isNaN(value)) {
      return "-";
    }
    if (value == Double.NEGATIVE_INFINITY) {
      return "silence";
    }
    String number = String.format(Locale.ROOT, "%." + decimals + "f", value);
    // A level just below 0 is 0, not minus 0.
    return number.matches("-0\\.0+") ? number.substring(1) : number;
  }
}
