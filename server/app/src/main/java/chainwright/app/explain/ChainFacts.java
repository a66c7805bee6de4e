package chainwright.app.explain;

import chainwright.engine.path.SignalPath;
import chainwright.notation.lowering.NoteName;
import chainwright.notation.model.Declarations;
import chainwright.quantity.Frequency;
import chainwright.quantity.NumberText;
import chainwright.quantity.TimeSpan;
import java.util.ArrayList;
import java.util.List;

/**
 * What a chain says of itself.
 *
 * @param path the chain
 */
record ChainFacts(SignalPath path) {

  /** Returns all of it, in sentences; empty text where nothing is said. */
  String sentence() {
    Declarations said = path.track().declarations();
    List<String> sentences = new ArrayList<>();
    String what = path.track().isBus() ? "A bus" : "A chain";
    sentences.add(
        path.source().map(source -> what + " for " + source.inWords() + lowest()).orElse(what));
    if (!said.spills().isEmpty()) {
      sentences.add(
          "Its microphone also hears "
              + String.join(
                  ", ",
                  said.spills().stream()
                      .map(
                          one ->
                              one.what().text()
                                  + one.level().map(level -> " at " + level).orElse(""))
                      .toList()));
    }
    said.group()
        .ifPresent(group -> sentences.add("It is one microphone of `" + group.text() + "`"));
    said.intent().ifPresent(intent -> sentences.add("It is meant to sound " + intent.text()));
    said.take()
        .ifPresent(
            take ->
                sentences.add(
                    "The recording is \""
                        + take.file()
                        + "\""
                        + take.from().map(from -> " from " + clock(from)).orElse("")
                        + take.to().map(to -> " to " + clock(to)).orElse("")));
    said.routes()
        .forEach(
            route ->
                sentences.add(
                    "It goes to `" + route.bus().text() + "`, fader at " + route.fader()));
    said.sends()
        .forEach(
            send ->
                sentences.add(
                    "A copy at "
                        + send.level()
                        + " goes to `"
                        + send.bus().text()
                        + "`, taken "
                        + (send.isPreFader() ? "before the fader" : "behind the fader")));
    said.maxTruePeak()
        .ifPresent(peak -> sentences.add("Its true peak should stay below " + peak.level()));
    said.loudness().ifPresent(loudness -> sentences.add("It is meant for " + loudness.level()));
    return String.join(". ", sentences) + ".";
  }

  private String lowest() {
    if (path.lowestHz().isEmpty()) {
      return "";
    }
    double hertz = path.lowestHz().getAsDouble();
    return ", whose lowest note is "
        + (path.isLowestDeclared() ? "" : "usually ")
        + NoteName.nearest(hertz)
        + " ("
        + Frequency.ofHertz(Math.rint(hertz * 10) / 10)
        + ")";
  }

  /** Returns a place in a recording as a player shows it, such as 2:41.3. */
  static String clock(TimeSpan at) {
    long minutes = (long) (at.seconds() / 60);
    String rest = NumberText.format(at.seconds() - 60 * minutes, 3);
    boolean isShort = rest.indexOf('.') == 1 || rest.length() == 1;
    return minutes + ":" + (isShort ? "0" : "") + rest;
  }
}
