package chainwright.app.assist;

import chainwright.app.view.Readings;
import chainwright.app.view.ResponseWords;
import chainwright.app.view.StructurePlots;
import chainwright.engine.path.PathElement.SplitElement;
import chainwright.notation.model.Step;
import chainwright.quantity.Level;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Says what an analogue insert does: its levels, how far it is from clipping, how late it is.
 *
 * @param ground what the hover stands on
 */
record InsertHover(HoverGround ground) {

  void tell(HoverPage page, Step.Insert insert, SplitElement split, StructurePlots plots) {
    SampleRate rate = ground.scope().sampleRate();
    double sendDbu = insert.settings().number("send").orElse(0.0);
    double returnDbu = insert.settings().number("return").orElse(0.0);
    double clipDbu = insert.settings().number("clip-level").orElse(sendDbu);
    String title =
        insert.title().isEmpty() ? "insert" : "insert " + HoverPage.plain(insert.title());
    page.say(
        HoverPage.answer(
            title,
            Readings.number(clipDbu - sendDbu, 1)
                + " dB of headroom over the alignment level, "
                + ResponseWords.of(split.response(), rate)
                + ", latency "
                + StructureHover.latency(ground.latencySeconds(List.of(split)), rate)));
    page.plot(plots.single(insert.title(), "insert", split.response()));
    levels(page, sendDbu, returnDbu, clipDbu);
    if (sendDbu != returnDbu) {
      page.say(
          "What leaves at "
              + Readings.analogueLevel(sendDbu)
              + " is expected back at "
              + Readings.analogueLevel(returnDbu)
              + ": "
              + Readings.gain(sendDbu - returnDbu)
              + " in all if the equipment itself changes nothing.");
    }
    insert
        .settings()
        .number("latency")
        .ifPresentOrElse(
            seconds -> {},
            () -> page.say("No latency is written: it counts as none until it is measured."));
    page.table(
        StageTables.HEAD,
        split.branches().isEmpty()
            ? List.of()
            : StageTables.rows(split.branches().get(0).elements(), ground));
    page.say(SettingLines.of(insert.settings(), Optional.empty()));
  }

  private void levels(HoverPage page, double sendDbu, double returnDbu, double clipDbu) {
    Optional<Level> alignment = ground.scope().alignment();
    if (alignment.isEmpty()) {
      page.say(
          "Without an `alignment` in the session its analogue levels have no digital counterpart.");
      return;
    }
    double alignmentDbfs = alignment.get().decibels();
    double clipDbfs = alignmentDbfs + clipDbu - sendDbu;
    List<List<String>> rows = new ArrayList<>();
    rows.add(row("alignment", alignmentDbfs, alignmentDbfs, sendDbu, returnDbu));
    if (clipDbfs < 0) {
      rows.add(row("the equipment clips", clipDbfs, alignmentDbfs, sendDbu, returnDbu));
    }
    List<String> fullScale = row("full scale", 0, alignmentDbfs, sendDbu, returnDbu);
    rows.add(
        clipDbfs < 0
            ? List.of(fullScale.get(0), fullScale.get(1), fullScale.get(2), "clipped")
            : fullScale);
    if (clipDbfs >= 0) {
      rows.add(row("the equipment clips", clipDbfs, alignmentDbfs, sendDbu, returnDbu));
    }
    page.table(List.of("level", "digital", "goes out at", "comes back at"), rows);
    page.say(
        clipDbfs < 0
            ? "A peak above " + Readings.level(clipDbfs) + " clips the equipment."
            : "A peak at full scale stays "
                + Readings.number(clipDbfs, 1)
                + " dB below the clipping of the equipment.");
  }

  private static List<String> row(
      String name, double dbfs, double alignmentDbfs, double sendDbu, double returnDbu) {
    double above = dbfs - alignmentDbfs;
    return List.of(
        name,
        dbfs > 0 ? "not reached" : Readings.level(dbfs),
        Readings.analogueLevel(sendDbu + above),
        Readings.analogueLevel(returnDbu + above));
  }
}
