package chainwright.app.plot;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/** Plots of textbook formulas, made for looking at and for the golden files. */
final class SamplePlots {

  private static final int POINTS = 240;

  private SamplePlots() {}

  /** Returns one plot of each kind and turn, by the name of its golden files. */
  static Map<String, Plot> all() {
    Map<String, Plot> plots = new LinkedHashMap<>();
    plots.put("high-pass", highPass());
    plots.put("bells", bells());
    plots.put("notch", notch());
    plots.put("phase", phase());
    plots.put("group-delay", groupDelay());
    plots.put("compressor", compressor());
    plots.put("gate", gate());
    plots.put("step", step());
    plots.put("decay", decay());
    plots.put("repeats", repeats());
    plots.put("harmonics", harmonics());
    return plots;
  }

  static FrequencyPlot highPass() {
    DoubleUnaryOperator stage = f -> highPassDb(f, 80, 3);
    return FrequencyPlot.of(
            "High-pass 80 Hz, 18 dB/oct",
            List.of(
                curve("high-pass", CurveRole.STAGE, stage),
                curve(
                    "chain so far",
                    CurveRole.CHAIN_SO_FAR,
                    f -> stage.applyAsDouble(f) + bellDb(f, 250, -3, 1.2)),
                curve("analogue", CurveRole.COMPARISON, f -> highPassDb(f, 80, 2))))
        .withZones(voiceZones())
        .withMarkers(
            List.of(
                new FrequencyMarker(80, stage.applyAsDouble(80), "−3.0 dB at 80 Hz"),
                new FrequencyMarker(110, stage.applyAsDouble(110), "A2 110 Hz")));
  }

  static FrequencyPlot bells() {
    return FrequencyPlot.of(
            "Bell −4.5 dB at 320 Hz, Q 1.4",
            List.of(
                curve("bell", CurveRole.STAGE, f -> bellDb(f, 320, -4.5, 1.4)),
                curve(
                    "chain so far",
                    CurveRole.CHAIN_SO_FAR,
                    f -> bellDb(f, 320, -4.5, 1.4) + bellDb(f, 3800, 3, 0.9))))
        .withZones(voiceZones())
        .withMarkers(List.of(new FrequencyMarker(320, -4.5, "−4.5 dB at 320 Hz")));
  }

  private static FrequencyPlot notch() {
    return FrequencyPlot.of(
            "Notch 50 Hz",
            List.of(
                curve(
                    "notch",
                    CurveRole.STAGE,
                    f -> notchDb(Math.abs(f - 50) < 0.5 ? 50 : f, 50, 8))))
        .withMarkers(
            List.of(
                new FrequencyMarker(50, Double.NEGATIVE_INFINITY, "50 Hz"),
                new FrequencyMarker(100, notchDb(100, 50, 8), "100 Hz, 2nd harmonic of the hum")));
  }

  private static FrequencyPlot phase() {
    return FrequencyPlot.of(
            "High-pass 80 Hz, 12 dB/oct",
            List.of(
                curve(
                    "high-pass",
                    CurveRole.STAGE,
                    f -> {
                      double ratio = f / 80;
                      return Math.toDegrees(
                          Math.PI - Math.atan2(Math.sqrt(2) * ratio, 1 - ratio * ratio));
                    })))
        .withResponse(Response.PHASE)
        .withMarkers(List.of(new FrequencyMarker(80, 90, "90° at the cutoff")));
  }

  private static FrequencyPlot groupDelay() {
    return FrequencyPlot.of(
            "High-pass 80 Hz, 6 dB/oct",
            List.of(
                curve(
                    "high-pass",
                    CurveRole.STAGE,
                    f -> 1000 / (2 * Math.PI * 80) / (1 + f * f / 6400))))
        .withResponse(Response.GROUP_DELAY);
  }

  static LevelPlot compressor() {
    Samples input = Samples.ofEvenlySpaced(-60, 0, POINTS);
    return LevelPlot.of(
            "Compressor 3:1, threshold −24 dBFS",
            List.of(new Curve("3:1", CurveRole.STAGE, input, input.map(SamplePlots::softKnee))))
        .withThresholds(List.of(new LevelLine(-24, "threshold −24")))
        .withKnee(new ValueRange(-29, -19))
        .withReading(new LevelReading("nominal level", -18, softKnee(-18), -18 - softKnee(-18)));
  }

  private static LevelPlot gate() {
    Samples input = Samples.ofEvenlySpaced(-80, 0, POINTS);
    return LevelPlot.of(
            "Gate, opens at −40, closes at −46 dBFS",
            List.of(
                new Curve("opening", CurveRole.STAGE, input, input.map(x -> x < -40 ? x - 20 : x)),
                new Curve(
                    "closing", CurveRole.RETURN, input, input.map(x -> x < -46 ? x - 20 : x))))
        .withLevels(new ValueRange(-80, 0))
        .withThresholds(List.of(new LevelLine(-40, "opens −40"), new LevelLine(-46, "closes −46")))
        .withReading(new LevelReading("room noise", -54, -74, 20));
  }

  private static StepPlot step() {
    Samples times = Samples.ofEvenlySpaced(0, 0.5, 500);
    double attackSeconds = 0.010;
    double releaseSeconds = 0.120;
    DoubleUnaryOperator gain =
        t ->
            t < 0.05
                ? 0
                : t < 0.2
                    ? -6 * (1 - Math.exp(-(t - 0.05) / attackSeconds))
                    : -6 * Math.exp(-(t - 0.2) / releaseSeconds);
    return StepPlot.of(
            "Attack 10 ms, release 120 ms",
            List.of(new Curve("gain", CurveRole.STAGE, times, times.map(gain))),
            new ValueRange(0, 0.5))
        .withEvents(List.of(new TimeEvent(0.05, "up 10 dB"), new TimeEvent(0.2, "down 10 dB")))
        .withMarks(
            List.of(
                new TimeMark(0.06, -6 * 0.632, "63 % after 10 ms"),
                new TimeMark(0.32, -6 * 0.368, "63 % after 120 ms")));
  }

  /** Straight falls by 60 dB in 1.4 s, 1.5 s and 1 s, from the end of a pre-delay on. */
  static DecayPlot decay() {
    Samples times = Samples.ofEvenlySpaced(0, 1.9, 191);
    double preDelay = 0.06;
    return new DecayPlot(
        "Reverb 1.4 s",
        "level after a sound stops",
        List.of(
            fall("500 Hz to 1 kHz", CurveRole.STAGE, times, preDelay, 1.4),
            fall("125 Hz", CurveRole.BRANCH, times, preDelay, 1.5),
            fall("4 kHz", CurveRole.BRANCH, times, preDelay, 1)),
        List.of(),
        List.of(new TimeEvent(preDelay, "pre-delay 60 ms")),
        List.of(
            new TimeMark(1.46, -60, "−60 dB after 1.46 s"),
            new TimeMark(1.56, -60, "1.56 s at 125 Hz"),
            new TimeMark(1.06, -60, "1.06 s at 4 kHz")),
        new ValueRange(0, 1.9));
  }

  private static Curve fall(
      String label, CurveRole role, Samples times, double from, double seconds) {
    return new Curve(label, role, times, times.map(t -> -60 * Math.max(0, t - from) / seconds));
  }

  /** Each softer by half, and the highs by a little more. */
  static DecayPlot repeats() {
    List<Repeat> repeats = new ArrayList<>();
    double[] times = new double[10];
    double[] high = new double[10];
    for (int n = 1; n <= 10; n++) {
      times[n - 1] = 0.35 * n;
      high[n - 1] = -6.02 * (n - 1) - 2.5 * n;
      repeats.add(new Repeat(0.35 * n, -6.02 * (n - 1)));
    }
    return new DecayPlot(
        "Echo 350 ms",
        "level of each repeat, 125 Hz to 1 kHz",
        List.of(new Curve("4 kHz", CurveRole.BRANCH, Samples.of(times), Samples.of(high))),
        repeats,
        List.of(),
        List.of(),
        new ValueRange(-0.1, 3.7));
  }

  private static HarmonicsPlot harmonics() {
    return HarmonicsPlot.of(
        "Saturation, drive 6 dB at −18 dBFS",
        1000,
        Samples.of(0, -52.4, -46.1, -77, -68.3, -94, -88.2, Double.NEGATIVE_INFINITY, -99.4));
  }

  static Curve curve(String label, CurveRole role, DoubleUnaryOperator ofHertz) {
    Samples x = Samples.ofLogSpaced(20, 20_000, POINTS);
    return new Curve(label, role, x, x.map(ofHertz));
  }

  private static List<Zone> voiceZones() {
    return List.of(
        new Zone("rumble", 20, 70),
        new Zone("boom", 100, 200),
        new Zone("mud", 200, 500),
        new Zone("harsh", 2000, 4500),
        new Zone("sibilance", 4500, 10_000),
        new Zone("air", 10_000, 20_000));
  }

  /** Source: the Butterworth magnitude, 1 / sqrt(1 + (fc/f)^2n). */
  private static double highPassDb(double frequencyHz, double cutoffHz, int order) {
    return -10 * Math.log10(1 + Math.pow(cutoffHz / frequencyHz, 2 * order));
  }

  /** Source: the analogue bell (s² + sA/Q + 1) / (s² + s/(AQ) + 1), A² the gain at the centre. */
  private static double bellDb(double frequencyHz, double centreHz, double gainDb, double q) {
    double a = Math.pow(10, gainDb / 40);
    double w = frequencyHz / centreHz;
    double real = (1 - w * w) * (1 - w * w);
    return 10 * Math.log10((real + w * w * a * a / q / q) / (real + w * w / a / a / q / q));
  }

  private static double notchDb(double frequencyHz, double centreHz, double q) {
    double w = frequencyHz / centreHz;
    double real = (1 - w * w) * (1 - w * w);
    return 10 * Math.log10(real / (real + w * w / q / q));
  }

  /** A 3:1 curve above -24 dBFS whose knee is 10 dB wide. */
  private static double softKnee(double inputDbfs) {
    double over = inputDbfs + 24;
    double slope = 1.0 / 3 - 1;
    if (over < -5) {
      return inputDbfs;
    }
    return over > 5 ? inputDbfs + slope * over : inputDbfs + slope * (over + 5) * (over + 5) / 20;
  }
}
