package chainwright.app.cli;

import chainwright.app.render.LevelPolicy;
import chainwright.app.render.RenderOrder;
import chainwright.app.render.RenderReport;
import chainwright.app.render.StemSummary;
import chainwright.engine.sound.LevelHold;
import chainwright.engine.sound.MeasuredLevel;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * Says what a render made of its takes.
 *
 * @param order what was to be rendered
 * @param report what was rendered
 * @param expected the declared levels that the file must keep to
 */
record RenderSheet(RenderOrder order, RenderReport report, DeclaredLevels expected) {

  /** Returns the table of levels, and what was done to the level. */
  List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            Locale.ROOT,
            "Wrote %s: %.3f s%s, %d channel%s, %s Hz, %s",
            order.output(),
            report.written().frames() / order.fileRateHz(),
            report.tailFrames() == 0
                ? ""
                : String.format(
                    Locale.ROOT, " (%.3f s of it tail)", report.tailFrames() / order.rateHz()),
            report.channels(),
            report.channels() == 1 ? "" : "s",
            plain(order.fileRateHz()),
            order.samples()));
    report
        .stems()
        .ifPresent(
            stems ->
                lines.add(
                    "Wrote "
                        + stems.folder()
                        + ": "
                        + stems.files()
                        + " stems, a folder a bus; those of a folder, added, are what the bus gets"));
    boolean isChanged = report.gainDb() != 0;
    lines.add(
        String.format("%-19s %14s", "", take())
            + (isChanged ? String.format(" %10s", "as written") : "")
            + String.format(" %10s", "file"));
    lines.add(row("loudness [LUFS]", MeasuredLevel::integratedLufs, isChanged));
    lines.add(row("true peak [dBTP]", MeasuredLevel::truePeakDbtp, isChanged));
    if (isChanged) {
      lines.add("gain applied: " + decibels(report.gainDb()) + " dB, " + reason());
    } else if (order.policy() == LevelPolicy.MATCHED) {
      lines.add(
          report.heldBackDb() > 0
              ? "gain applied: none"
              : "gain applied: none, there is no difference of loudness to be matched");
    }
    if (report.heldBackDb() > 0) {
      lines.add(
          decibels(report.heldBackDb())
              + " dB more would match, but would lift the true peak over "
              + decibels(order.ceilingDbtp())
              + " dBTP");
    }
    return lines;
  }

  private MeasuredLevel file() {
    return report.asWritten().plus(report.gainDb());
  }

  /** Returns how many samples of all files were clipped. */
  long clippedSamples() {
    return report.written().clippedSamples()
        + report.stems().map(StemSummary::clippedSamples).orElse(0L);
  }

  private String take() {
    return report.takeCount() == 1 ? "take" : "loudest take";
  }

  /** Asks whether the file is as loud as was asked for and as is declared, and whole. */
  boolean isAsAsked() {
    boolean isHeld = order.policy() == LevelPolicy.HELD && report.gainDb() != 0;
    return !isHeld
        && report.heldBackDb() == 0
        && clippedSamples() == 0
        && expected.missed(file()).isEmpty();
  }

  private String reason() {
    if (order.policy() == LevelPolicy.MATCHED) {
      return "to match the " + take();
    }
    double louderLu = report.asWritten().integratedLufs() - report.take().integratedLufs();
    return Double.isFinite(louderLu)
        ? String.format(
            Locale.ROOT,
            "held at the loudness of the %s: the chain makes it more than %.0f LU louder"
                + " (--as-written lets it)",
            take(),
            LevelHold.MOST_LOUDER_LU)
        : String.format(
            Locale.ROOT,
            "held at the true peak of the %s: the chain lifts it by more than %.0f dB"
                + " (--as-written lets it)",
            take(),
            LevelHold.MOST_HIGHER_DB);
  }

  private String row(String name, ToDoubleFunction<MeasuredLevel> figure, boolean isChanged) {
    MeasuredLevel asWritten = report.asWritten();
    return String.format("%-19s %14s", name, decibels(figure.applyAsDouble(report.take())))
        + (isChanged ? String.format(" %10s", decibels(figure.applyAsDouble(asWritten))) : "")
        + String.format(" %10s", decibels(figure.applyAsDouble(file())));
  }

  /** A level to a tenth, in words where there is none. */
  private static String decibels(double level) {
    if (Double.isNaN(level)) {
      return "too short";
    }
    if (Double.isInfinite(level)) {
      return "silent";
    }
    String text = String.format(Locale.ROOT, "%.1f", level);
    return text.equals("-0.0") ? "0.0" : text.replace('-', '\u2212');
  }

  private static String plain(double hertz) {
    return hertz == Math.rint(hertz) ? Long.toString((long) hertz) : Double.toString(hertz);
  }

  /** What is not as declared, and what a listener or a converter would suffer by. */
  List<String> cautions() {
    List<String> cautions = new ArrayList<>(expected.missed(file()));
    if (file().truePeakDbtp() > 0) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "the true peak lies %.1f dB above full scale: converters and coders will clip it,"
                  + " loudly on headphones; turn the chain down (EBU R 128)",
              file().truePeakDbtp()));
    }
    if (clippedSamples() > 0) {
      cautions.add(
          (clippedSamples() == 1 ? "1 sample" : clippedSamples() + " samples")
              + " went over full scale and were clipped; lower the level, or write --bits 32f");
    }
    return cautions;
  }
}
