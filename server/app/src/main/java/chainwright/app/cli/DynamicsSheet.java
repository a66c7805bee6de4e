package chainwright.app.cli;

import chainwright.app.view.Outline;
import chainwright.app.view.Part;
import chainwright.engine.mix.StageMeters;
import chainwright.engine.mix.StageReading;
import chainwright.engine.path.PathElement.StageElement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Says what each stage of dynamics on the way to a mix got, and how far it lowered it.
 *
 * @param subject what was rendered
 * @param meters what was measured
 */
record DynamicsSheet(RenderSubject subject, StageMeters meters) {

  /** Returns a line a stage, in the order of the signal; none where nothing was measured. */
  List<String> lines() {
    List<StageMeters.Measured> all = meters.readings();
    if (all.isEmpty()) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    lines.add("");
    lines.add(
        String.format(
            Locale.ROOT, "%-47s %15s %15s", "dynamics", "level in [dBFS]", "reduction [dB]"));
    lines.add(row("", "", "average", "peak", "95 %", "most"));
    String last = "";
    for (StageMeters.Measured one : all) {
      String track = track(one.stage());
      lines.add(row(track.equals(last) ? "" : track, name(one.stage()), one.reading()));
      last = track;
    }
    return lines;
  }

  private static String row(String track, String stage, StageReading reading) {
    boolean isActive = Double.isFinite(reading.averageDbfs());
    return row(
        track,
        stage,
        decibels(reading.averageDbfs()),
        decibels(reading.peakDbfs()),
        isActive ? decibels(reading.usualReductionDb()) : "-",
        isActive ? decibels(reading.mostReductionDb()) : "-");
  }

  private static String row(
      String track, String stage, String average, String peak, String usual, String most) {
    return String.format(
        Locale.ROOT, "%-16s %-30s %8s %6s %8s %6s", track, stage, average, peak, usual, most);
  }

  private static String decibels(double level) {
    if (Double.isInfinite(level)) {
      return "silent";
    }
    String text = String.format(Locale.ROOT, "%.1f", level);
    return text.equals("-0.0") ? "0.0" : text.replace('-', '\u2212');
  }

  private String track(StageElement stage) {
    return entry(stage).getKey();
  }

  private String name(StageElement stage) {
    Outline outline = entry(stage).getValue();
    Part part =
        outline.all().stream()
            .filter(one -> one.stage().filter(stage::equals).isPresent())
            .findFirst()
            .orElseThrow();
    return part.number() + " " + part.words() + part.label().map(label -> " " + label).orElse("");
  }

  private Map.Entry<String, Outline> entry(StageElement stage) {
    return subject.outlines().entrySet().stream()
        .filter(
            entry ->
                entry.getValue().all().stream()
                    .anyMatch(one -> one.stage().filter(stage::equals).isPresent()))
        .findFirst()
        .orElseThrow();
  }
}
