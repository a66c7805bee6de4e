package chainwright.app.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** What holds for every drawing, whatever the data. */
class PlotInvariantTest {

  /** The agreed bound for a picture in a hover, after base64. */
  private static final int LARGEST_BASE64 = 40_000;

  /** Our own aim before base64, so that three pictures fit a hover. */
  private static final int LARGEST_SVG = 12_000;

  private static final int STEPS = 60;

  private static final Pattern FORBIDDEN =
      Pattern.compile("<style|style=|class=|<script|href|url\\(|currentColor|NaN|Infinity");

  static Stream<Plot> plots() {
    List<Plot> plots = new ArrayList<>(SamplePlots.all().values());
    plots.addAll(strange());
    Random random = new Random(2017);
    for (int i = 0; i < STEPS; i++) {
      plots.add(randomPlot(random));
    }
    return plots.stream();
  }

  @ParameterizedTest
  @MethodSource("plots")
  void drawing_anyPlot_keepsTheRules(Plot plot) throws Exception {
    check(plot);
  }

  @Test
  void svg_samples_areSmall() {
    for (Plot plot : SamplePlots.all().values()) {
      assertThat(SvgPlot.render(plot).length()).isLessThan(LARGEST_SVG);
    }
  }

  @Test
  void words_reservedAndIllegalCharacters_areEscapedOrDropped() throws Exception {
    FrequencyPlot plot =
        FrequencyPlot.of(
                "a < b & \"c\" > d\u0000\ud800\u202e`",
                List.of(SamplePlots.curve("</svg><script>", CurveRole.STAGE, f -> 1)))
            .withZones(List.of(new Zone("<z>", 100, 1000)))
            .withMarkers(List.of(new FrequencyMarker(500, 1, "&amp;")));
    check(plot);
    String text = parse(SvgPlot.render(plot)).getDocumentElement().getTextContent();
    assertThat(text).contains("a < b & \"c\" > d \ufffd`", "</svg><script>", "<z>", "&amp;");
  }

  @Test
  void notch_minusInfinity_reachesTheFrameAndLeavesNoNumber() {
    Curve notch =
        new Curve(
            "",
            CurveRole.STAGE,
            Samples.of(20, 100, 20_000),
            Samples.of(0, Double.NEGATIVE_INFINITY, 0));
    Axis y = Axis.ofEven(new ValueRange(-48, 6), 12, 1, "dB");
    Box box = new Box(0, 0, 100, 54);
    List<PointRun> runs =
        Strokes.lines(notch, Axis.ofFrequency(new ValueRange(20, 20_000)), y, box);
    assertThat(runs).hasSize(1);
    assertThat(runs.get(0).y(1)).isEqualTo(box.bottom());
  }

  @Test
  void curve_leavesTheFrame_endsThereAndDoesNotFollowIt() {
    Curve dip =
        new Curve("", CurveRole.STAGE, Samples.of(0, 1, 2, 3, 4), Samples.of(0, -20, -20, -20, 0));
    Axis axis = Axis.ofEven(new ValueRange(0, 4), 1, 1, "s");
    Axis y = Axis.ofEven(new ValueRange(-10, 0), 5, 1, "dB");
    List<PointRun> runs = Strokes.lines(dip, axis, y, new Box(0, 0, 40, 100));
    assertThat(runs).hasSize(2);
    assertThat(runs.get(0).x(1)).isEqualTo(5);
    assertThat(runs.get(1).x(0)).isEqualTo(35);
  }

  @Test
  void strokes_randomCurves_stayInTheFrame() {
    Random random = new Random(1908);
    Box box = new Box(50, 43, 544, 202);
    for (int round = 0; round < 200; round++) {
      FrequencyPlot plot = randomPlot(random);
      Chart chart = ChartOf.plot(plot);
      for (Curve curve : chart.curves()) {
        for (PointRun run : Strokes.lines(curve, chart.x(), chart.y(), box)) {
          for (PointRun line : List.of(run, run.simplified(0.2))) {
            for (int i = 0; i < line.size(); i++) {
              assertThat(line.x(i)).isBetween(box.left(), box.right());
              assertThat(line.y(i)).isBetween(box.top(), box.bottom());
            }
          }
        }
      }
    }
  }

  @Test
  void simplified_randomLine_staysWithinTheTolerance() {
    Random random = new Random(77);
    PointRun run = new PointRun();
    for (int i = 0; i < 400; i++) {
      run.add(i, 30 * Math.sin(i / 25.0) + random.nextDouble());
    }
    PointRun simple = run.simplified(0.2);
    assertThat(simple.size()).isLessThan(run.size());
    int piece = 0;
    for (int i = 0; i < run.size(); i++) {
      while (simple.x(piece + 1) < run.x(i)) {
        piece++;
      }
      double along = (run.x(i) - simple.x(piece)) / (simple.x(piece + 1) - simple.x(piece));
      double dy = simple.y(piece + 1) - simple.y(piece);
      double vertical = Math.abs(run.y(i) - simple.y(piece) - along * dy);
      double width = simple.x(piece + 1) - simple.x(piece);
      assertThat(vertical * width / Math.hypot(width, dy)).isLessThanOrEqualTo(0.2 + 1e-9);
    }
  }

  @Test
  void distortion_loneSecondHarmonicAtMinus40_isOnePercent() {
    HarmonicsPlot plot = HarmonicsPlot.of("", 1000, Samples.of(0, -40));
    assertThat(plot.totalDistortionPercent()).isCloseTo(1, within(1e-12));
  }

  @Test
  void inputs_outOfRange_throw() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Zone("mud", 500, 200));
    assertThatIllegalArgumentException().isThrownBy(() -> new FrequencyMarker(0, 0, ""));
    assertThatIllegalArgumentException().isThrownBy(() -> new ValueRange(0, Double.NaN));
    assertThatIllegalArgumentException().isThrownBy(() -> new TextStyle(20, 14, false));
    assertThatIllegalArgumentException().isThrownBy(() -> HarmonicsPlot.of("", 1000, Samples.of()));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Curve("", CurveRole.STAGE, Samples.of(1, 2), Samples.of(1)))
        .withMessageContaining("1 values at 2 places");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Curve("", CurveRole.STAGE, Samples.of(2, 1), Samples.of(1, 1)));
  }

  private static void check(Plot plot) throws Exception {
    for (PlotTheme theme : List.of(PlotTheme.PAPER, PlotTheme.LIGHT, PlotTheme.DARK)) {
      String svg = SvgPlot.render(plot, theme);
      assertThat(svg).isEqualTo(SvgPlot.render(plot, theme));
      assertThat(SvgPlot.toDataUri(svg).length()).isLessThan(LARGEST_BASE64);
      Document document = parse(svg);
      for (String markup : markup(svg)) {
        assertThat(FORBIDDEN.matcher(markup).find()).as(markup).isFalse();
      }
      assertThat(document.getElementsByTagName("script").getLength()).isZero();
      checkOnSheet(document);
    }
    for (boolean ascii : new boolean[] {false, true}) {
      for (int columns : new int[] {48, 70, 120}) {
        String text = TextPlot.render(plot, new TextStyle(columns, 14, ascii));
        assertThat(text).endsWith("\n").doesNotContain("NaN", "Infinity", " \n");
        for (String line : text.lines().toList()) {
          assertThat(line.codePointCount(0, line.length())).isLessThanOrEqualTo(columns);
          assertThat(ascii && !line.matches("[ -~]*")).isFalse();
        }
      }
    }
    assertThat(AltText.of(plot)).doesNotContain("\n", "NaN");
  }

  /** Every path stays on the sheet: its points are walked as a viewer would. */
  private static void checkOnSheet(Document document) {
    Matcher size = Pattern.compile("0 0 (\\d+) (\\d+)").matcher(attribute(document, "viewBox"));
    assertThat(size.matches()).isTrue();
    double width = Double.parseDouble(size.group(1));
    double height = Double.parseDouble(size.group(2));
    NodeList paths = document.getElementsByTagName("path");
    for (int i = 0; i < paths.getLength(); i++) {
      String data = paths.item(i).getAttributes().getNamedItem("d").getNodeValue();
      Matcher token = Pattern.compile("([MLHVlZ]?) ?(-?[0-9]*\\.?[0-9]+)?").matcher(data);
      double[] at = new double[2];
      int axis = 0;
      char command = 'M';
      while (token.find()) {
        if (!token.group(1).isEmpty()) {
          command = token.group(1).charAt(0);
          axis = command == 'V' ? 1 : 0;
        }
        if (token.group(2) != null) {
          double number = Double.parseDouble(token.group(2));
          at[axis] = command == 'l' ? at[axis] + number : number;
          axis = command == 'H' || command == 'V' ? axis : 1 - axis;
          assertThat(at[0]).as(data).isBetween(0.0, width);
          assertThat(at[1]).as(data).isBetween(0.0, height);
        }
      }
    }
  }

  private static String attribute(Document document, String name) {
    return document.getDocumentElement().getAttribute(name);
  }

  private static List<String> markup(String svg) {
    List<String> tags = new ArrayList<>();
    Matcher tag = Pattern.compile("<[^>]*>").matcher(svg);
    while (tag.find()) {
      tags.add(tag.group());
    }
    return tags;
  }

  private static Document parse(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(svg)));
  }

  private static List<Plot> strange() {
    double inf = Double.POSITIVE_INFINITY;
    Curve empty = new Curve("empty", CurveRole.STAGE, Samples.of(), Samples.of());
    Curve single = new Curve("one", CurveRole.STAGE, Samples.of(440), Samples.of(3));
    Curve broken =
        new Curve(
            "broken",
            CurveRole.STAGE,
            Samples.of(0, 30, 100, 300, 1000, 3000, 1e9),
            Samples.of(1, Double.NaN, -inf, -inf, inf, Double.MAX_VALUE, -Double.MAX_VALUE));
    Curve deep = SamplePlots.curve("far down", CurveRole.STAGE, f -> -200 - f / 1000);
    Curve loud = SamplePlots.curve("far up", CurveRole.STAGE, f -> 300);
    FrequencyPlot crowded = FrequencyPlot.of("long ".repeat(60), List.of(broken, deep, loud));
    Random random = new Random(5);
    Samples dense = Samples.ofLogSpaced(20, 20_000, 20_000);
    Curve noise =
        new Curve("noise", CurveRole.STAGE, dense, dense.map(f -> 5 * random.nextGaussian()));
    List<Zone> zones = new ArrayList<>();
    List<FrequencyMarker> markers = new ArrayList<>();
    for (int i = 0; i < 25; i++) {
      zones.add(new Zone("zone with a name " + i, 20 + 10 * i, 20_000));
      markers.add(new FrequencyMarker(1000 + i, i % 3 == 0 ? Double.NaN : inf, "mark " + i));
    }
    List<Repeat> many = IntStream.range(0, 688).mapToObj(i -> new Repeat(i, -0.087 * i)).toList();
    return List.of(
        FrequencyPlot.of("", List.of()),
        FrequencyPlot.of("空白のない長い題名", List.of(empty, single)),
        FrequencyPlot.of("broken", List.of(broken)),
        FrequencyPlot.of("noise", List.of(noise, noise, noise)),
        FrequencyPlot.of("deep", List.of(deep)),
        FrequencyPlot.of("phase", List.of(deep)).withResponse(Response.PHASE),
        FrequencyPlot.of("delay", List.of(broken)).withResponse(Response.GROUP_DELAY),
        FrequencyPlot.of("narrow", List.of(single)).withFrequencies(new ValueRange(435, 445)),
        FrequencyPlot.of("slow", List.of(single)).withFrequencies(new ValueRange(0.01, 20)),
        FrequencyPlot.of("fine", List.of(single)).withValues(new ValueRange(-0.05, 0.05)),
        FrequencyPlot.of("coarse", List.of(single)).withValues(new ValueRange(-1e5, 1e5)),
        crowded.withZones(zones).withMarkers(markers.subList(0, 8)),
        LevelPlot.of("", List.of(empty)),
        LevelPlot.of("shut", List.of(broken))
            .withReading(new LevelReading("noise", -90, -inf, inf)),
        StepPlot.of("", List.of(), new ValueRange(0, 1e-4)),
        StepPlot.of("slow", List.of(broken), new ValueRange(0, 600)),
        decay(List.of(), List.of(), new ValueRange(0, 1e-4)),
        decay(List.of(broken, empty), List.of(new Repeat(0, -inf)), new ValueRange(0, 600)),
        decay(List.of(deep), many, new ValueRange(-1, 690)),
        HarmonicsPlot.of("", 50, Samples.of(0)),
        new HarmonicsPlot("", 50, Samples.of(0, 6, inf, Double.NaN, -inf, 1, 2, 3, 4, 5), -17));
  }

  private static DecayPlot decay(List<Curve> curves, List<Repeat> repeats, ValueRange times) {
    return new DecayPlot(
        "decay",
        "level",
        curves,
        repeats,
        List.of(new TimeEvent(times.low(), "start")),
        List.of(new TimeMark(times.high(), Double.NaN, "end")),
        times);
  }

  private static FrequencyPlot randomPlot(Random random) {
    List<Curve> curves = new ArrayList<>();
    CurveRole[] roles = CurveRole.values();
    for (int n = random.nextInt(4); n >= 0; n--) {
      int waves = n + 1;
      double size = Math.pow(10, random.nextInt(5) - 1);
      double holes = random.nextDouble() * 0.2;
      curves.add(
          SamplePlots.curve(
              "curve " + n,
              roles[random.nextInt(roles.length)],
              f ->
                  random.nextDouble() < holes
                      ? (random.nextBoolean() ? Double.NaN : Double.NEGATIVE_INFINITY)
                      : size * Math.sin(Math.log(f) * waves)));
    }
    double frequencyHz = 20 + random.nextInt(19_000);
    return FrequencyPlot.of("random", curves)
        .withMarkers(List.of(new FrequencyMarker(frequencyHz, random.nextGaussian(), "somewhere")));
  }

  private static org.assertj.core.data.Offset<Double> within(double tolerance) {
    return org.assertj.core.data.Offset.offset(tolerance);
  }
}
