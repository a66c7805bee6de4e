package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.notation.model.Definition;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.NumberText;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Says what a setting of a session comes to.
 *
 * @param ground what the hover stands on
 */
record SessionHover(HoverGround ground) {

  /** The root of 0.6 V², the voltage of 0 dBu [V]. Source: 1 mW in 600 ohms [computed]. */
  private static final double REFERENCE_VOLTS = Math.sqrt(0.6);

  /** The speed of sound in air of 20 °C [m/s], as the reference page states it. */
  private static final double SOUND_METRES_PER_SECOND = 343;

  private static final int HARMONICS = 8;

  /**
   * Tells of a setting of a session.
   *
   * @param session the session
   * @param word the setting's word
   * @param span its line
   * @return what to show; empty if the setting has no value
   */
  Optional<HoverText> of(Definition.Session session, String word, TextSpan span) {
    HoverPage page = ground.page();
    boolean isTold =
        switch (word) {
          case "session" -> session(page, session);
          case "sample-rate" -> session.sampleRate().map(rate -> rate(page, rate)).orElse(false);
          case "alignment" ->
              session.alignment().map(level -> alignment(page, level.decibels())).orElse(false);
          case "mains" -> session.mainsHz().map(hertz -> mains(page, hertz)).orElse(false);
          case "tempo" -> session.tempoBpm().map(bpm -> tempo(page, bpm)).orElse(false);
          case "listeners" -> session.listeners().map(who -> listeners(page, who)).orElse(false);
          case "intent" -> session.intent().map(name -> intent(page, name.text())).orElse(false);
          default -> false;
        };
    return isTold ? Optional.of(page.over(span)) : Optional.empty();
  }

  private boolean session(HoverPage page, Definition.Session session) {
    long chains = ground.scope().tracks().stream().filter(track -> !track.isBus()).count();
    long buses = ground.scope().tracks().size() - chains;
    int presets = ground.scope().presets().size();
    page.say(
        HoverPage.answer(
            "session " + HoverPage.plain(session.title()),
            chains
                + (chains == 1 ? " chain, " : " chains, ")
                + buses
                + (buses == 1 ? " bus, " : " buses, ")
                + presets
                + (presets == 1 ? " preset, at " : " presets, at ")
                + ground.scope().sampleRate()));
    List<List<String>> rows = new ArrayList<>();
    session.sampleRate().ifPresent(rate -> rows.add(List.of("sample rate", rate.toString())));
    session
        .alignment()
        .ifPresent(level -> rows.add(List.of("0 dBu", Readings.level(level.decibels()))));
    session.mainsHz().ifPresent(hertz -> rows.add(List.of("mains", Readings.frequency(hertz))));
    session
        .tempoBpm()
        .ifPresent(bpm -> rows.add(List.of("tempo", NumberText.format(bpm, 1) + " bpm")));
    page.table(List.of("fact", "value"), rows);
    page.notes(session.notes());
    return true;
  }

  private static boolean rate(HoverPage page, SampleRate rate) {
    double seconds = 1 / rate.hertz();
    page.say(
        HoverPage.answer(
            "sample-rate " + rate,
            "sound up to "
                + Readings.frequency(rate.hertz() / 2)
                + "; a sample lasts "
                + Readings.time(seconds)
                + ", in which sound travels "
                + Readings.number(seconds * SOUND_METRES_PER_SECOND * 1000, 1)
                + " mm"));
    page.table(
        List.of("time", "samples"),
        List.of(
            List.of("1 ms", NumberText.format(rate.hertz() / 1000, 1)),
            List.of("10 ms", NumberText.format(rate.hertz() / 100, 1)),
            List.of("1 s", NumberText.format(rate.hertz(), 0))));
    return true;
  }

  private static boolean alignment(HoverPage page, double zeroDbuDbfs) {
    page.say(
        HoverPage.answer(
            "alignment",
            "0 dBu stands for "
                + Readings.level(zeroDbuDbfs)
                + ", so full scale is "
                + Readings.analogueLevel(-zeroDbuDbfs)
                + "; dynamics and saturation are read at this level"));
    List<List<String>> rows = new ArrayList<>();
    for (double dbu : new double[] {-10, 0, 4, -zeroDbuDbfs}) {
      rows.add(
          List.of(
              Readings.analogueLevel(dbu),
              Readings.number(REFERENCE_VOLTS * Math.pow(10, dbu / 20), 3) + " V RMS",
              Readings.level(zeroDbuDbfs + dbu)));
    }
    page.table(List.of("analogue", "voltage", "digital"), rows);
    return true;
  }

  private static boolean mains(HoverPage page, double hertz) {
    page.say(
        HoverPage.answer(
            "mains " + Readings.frequency(hertz),
            "hum lies at "
                + Readings.frequency(hertz)
                + " and its multiples, buzz of rectifiers at the even ones"));
    List<List<String>> rows = new ArrayList<>();
    for (int n = 1; n <= HARMONICS; n++) {
      rows.add(List.of(String.valueOf(n), Readings.pitch(n * hertz)));
    }
    page.table(List.of("harmonic", "frequency and nearest note"), rows);
    return true;
  }

  private static boolean tempo(HoverPage page, double bpm) {
    double crotchet = 60 / bpm;
    page.say(
        HoverPage.answer(
            "tempo " + NumberText.format(bpm, 1) + " bpm",
            "a crotchet lasts " + Readings.time(crotchet)));
    page.table(
        List.of("note", "time"),
        List.of(
            List.of("bar of four", Readings.time(4 * crotchet)),
            List.of("crotchet", Readings.time(crotchet)),
            List.of("dotted quaver", Readings.time(0.75 * crotchet)),
            List.of("quaver", Readings.time(crotchet / 2)),
            List.of("quaver triplet", Readings.time(crotchet / 3)),
            List.of("semiquaver", Readings.time(crotchet / 4))));
    return true;
  }

  /** Source of the figures: WHO and ITU-T, H.870, modes 1 and 2 (second-hand). */
  private static boolean listeners(HoverPage page, String who) {
    boolean isMinor = who.equals("minors");
    page.say(
        HoverPage.answer(
            "listeners " + who,
            (isMinor ? "75" : "80")
                + " dBA for 40 hours a week at most; half the time for every 3 dB more"));
    page.say("Source: WHO and ITU-T, H.870, mode " + (isMinor ? "2" : "1") + " (second-hand).");
    return true;
  }

  private boolean intent(HoverPage page, String intent) {
    long own =
        ground.scope().tracks().stream()
            .filter(track -> track.declarations().intent().isPresent())
            .count();
    page.say(
        HoverPage.answer(
            "intent " + intent,
            "what is called much follows it, save in the "
                + own
                + (own == 1 ? " chain that says its own" : " chains that say their own")));
    return true;
  }
}
