package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.dsp.filter.Response;
import chainwright.dsp.filter.ResponseProduct;
import chainwright.dsp.filter.ResponseSearch;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.StageSound;
import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.lowering.NoteName;
import chainwright.notation.model.Value;
import chainwright.notation.model.Written;
import chainwright.quantity.Frequency;
import chainwright.quantity.NumberText;
import chainwright.quantity.QualityFactor;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Makes the remarks on one stage. */
final class StageHints {

  /**
   * The lowest and the highest key of the piano [Hz]: A0 and C8, whatever lies between is a note.
   */
  private static final double LOWEST_NOTE_HZ = 27.5;

  private static final double HIGHEST_NOTE_HZ = 4187;

  /** A difference that one would not set a filter anew for, as a share of the frequency. */
  private static final double NEAR = 0.01;

  /** How far around its cutoff the corner of a filter is looked for, as a factor. */
  private static final double REACH = 16;

  private static final Set<String> TUNED = Set.of("cutoff", "centre", "frequency");
  private static final Set<String> PASSES = Set.of("high-pass", "low-pass");
  private static final Set<String> BANDS = Set.of("bell", "band-pass", "notch", "dynamic-bell");

  private StageHints() {}

  /**
   * Makes the remarks.
   *
   * @param stage a stage that can be designed
   * @param before the stages before it on the same way
   */
  static List<Hint> of(StageElement stage, List<StageElement> before) {
    List<Hint> hints = new ArrayList<>();
    OmittedSettings.hint(stage).ifPresent(hints::add);
    for (Written written : stage.stage().settings().written()) {
      if (written.value() instanceof Value.Of value) {
        double number = value.quantity().baseValue();
        int end = written.valueSpan().end();
        if (TUNED.contains(written.setting().name())) {
          double highestHz =
              stage.context().source().map(SourceKind::highestHz).orElse(HIGHEST_NOTE_HZ);
          note(number, highestHz, end).ifPresent(hints::add);
        } else if (written.setting().name().equals("Q") && BANDS.contains(stage.word())) {
          hints.add(octaves(stage, number, end));
        }
      }
    }
    if (PASSES.contains(stage.word())) {
      corner(stage, before).ifPresent(hints::add);
    }
    return hints;
  }

  /** The name of the lowest note's frequency. */
  static Optional<Hint> note(double hertz, int offset) {
    return note(hertz, HIGHEST_NOTE_HZ, offset);
  }

  /** The name of a frequency's note; empty below the piano and above what the source plays. */
  private static Optional<Hint> note(double hertz, double highestHz, int offset) {
    if (hertz < LOWEST_NOTE_HZ || hertz > Math.min(highestHz, HIGHEST_NOTE_HZ)) {
      return Optional.empty();
    }
    String name = NoteName.nearest(hertz);
    long cents = Math.round(NoteName.centsAboveNearest(hertz));
    double noteHz = NoteName.frequency(name).orElseThrow().hertz();
    String label =
        cents == 0 ? "= " + name : "\u2248 " + name + " " + signed((double) cents, 0) + " ct";
    String tooltip =
        Frequency.ofHertz(hertz)
            + (cents == 0
                ? " is the note " + name + "."
                : " lies "
                    + Math.abs(cents)
                    + (Math.abs(cents) == 1 ? " cent " : " cents ")
                    + (cents > 0 ? "above" : "below")
                    + " the note "
                    + name
                    + ", "
                    + NumberText.format(noteHz, 2)
                    + " Hz.")
            + "\n\nSource: ISO 16:1975, A4 = 440 Hz, in equal temperament.";
    return Optional.of(new Hint(Hint.Kind.NOTES, offset, label, tooltip, ""));
  }

  private static Hint octaves(StageElement stage, double quality, int offset) {
    double octaves = new QualityFactor(quality).toBandwidth().octaves();
    double centreHz = stage.context().number("centre");
    double edge = Math.pow(2, octaves / 2);
    String between =
        stage.word().equals("bell")
            ? "between the points of half the gain in dB"
            : "between the points 3 dB down";
    String tooltip =
        "Q "
            + NumberText.format(quality)
            + " is a width of "
            + spelt(octaves)
            + " octaves: "
            + Readings.band(centreHz / edge, centreHz * edge)
            + ", "
            + between
            + ".\n\nSource: Audio EQ Cookbook, W3C Group Note: 1/Q = 2 sinh(ln(2)/2 N).";
    return new Hint(Hint.Kind.OCTAVES, offset, "\u2248 " + spelt(octaves) + " oct", tooltip, "");
  }

  /**
   * Where the level is 3 dB down, if that is not the cutoff as written: by the family, by a Q, or
   * by the filters of the same kind before it, which then act together.
   */
  private static Optional<Hint> corner(StageElement stage, List<StageElement> before) {
    double cutoffHz = stage.context().number("cutoff");
    List<Response> filters = new ArrayList<>();
    for (StageElement other : before) {
      if (other.word().equals(stage.word())) {
        other.sound().map(StageSound::response).ifPresent(filters::add);
      }
    }
    int stacked = filters.size();
    Response own = stage.sound().orElseThrow().response();
    filters.add(own);
    Optional<Double> found = corner(stage, new ResponseProduct(filters), cutoffHz);
    if (found.isEmpty() || Math.abs(found.get() / cutoffHz - 1) < NEAR) {
      return Optional.empty();
    }
    String at = "\u22123 dB at " + Readings.frequency(found.get());
    String why =
        stacked == 0
            ? "Here the cutoff is not the point 3 dB down, because of the family or the Q: at "
                + Frequency.ofHertz(cutoffHz)
                + " the level is "
                + signed(own.decibelsAt(cutoffHz), 1)
                + " dB."
            : "With "
                + (stacked == 1 ? "the " + stage.word() : stacked + " filters of this kind")
                + " before it, the level is 3 dB down there; by itself, this one is "
                + signed(own.decibelsAt(cutoffHz), 1)
                + " dB at its cutoff.";
    return Optional.of(
        new Hint(
            Hint.Kind.CORNERS,
            OmittedSettings.endOfSettings(stage),
            stacked == 0 ? at : "together " + at,
            why + "\n\nSource: computed from the filters themselves, as they are run.",
            ""));
  }

  /** The corner of what passes: of a high-pass the highest crossing, of a low-pass the lowest. */
  private static Optional<Double> corner(StageElement stage, Response response, double cutoffHz) {
    double top = stage.context().rate().nyquist().hertz() * 0.999;
    List<Double> crossings =
        ResponseSearch.findCrossings(
            response,
            ResponseSearch.HALF_POWER_DB,
            cutoffHz / REACH,
            Math.min(top, cutoffHz * REACH));
    if (crossings.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(crossings.get(stage.word().equals("high-pass") ? crossings.size() - 1 : 0));
  }

  /** A width: two decimals, or three where it is narrow. */
  private static String spelt(double octaves) {
    return NumberText.format(octaves, octaves < 0.1 ? 3 : 2);
  }

  private static String signed(double value, int decimals) {
    return NumberText.formatSigned(value, decimals).replace('-', '\u2212');
  }
}
