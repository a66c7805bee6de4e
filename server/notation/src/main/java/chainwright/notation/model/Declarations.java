package chainwright.notation.model;

import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.Level;
import chainwright.quantity.TimeSpan;
import java.util.List;
import java.util.Optional;

/**
 * What a chain or a bus says of itself before its stages.
 *
 * @param source the kind of source, as declared
 * @param spills what else its microphone hears
 * @param take its recording
 * @param lowestNote the lowest note that is played or sung
 * @param group the name of the group of microphones that share its sound
 * @param intent what it is meant to sound like, such as "natural"
 * @param routes where it goes
 * @param sends what is sent elsewhere as well
 * @param maxTruePeak the true-peak level that it must not pass
 * @param loudness the loudness that it is meant for
 * @param listens the places to listen to
 */
public record Declarations(
    Optional<Source> source,
    List<Spill> spills,
    Optional<Take> take,
    Optional<LowestNote> lowestNote,
    Optional<Name> group,
    Optional<Name> intent,
    List<Route> routes,
    List<Send> sends,
    Optional<Target> maxTruePeak,
    Optional<Target> loudness,
    List<Listen> listens) {

  /** Nothing declared. */
  public static final Declarations NONE =
      new Declarations(
          Optional.empty(),
          List.of(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of(),
          List.of(),
          Optional.empty(),
          Optional.empty(),
          List.of());

  /**
   * Copies the lists.
   *
   * @param source the kind of source
   * @param spills the spill
   * @param take the recording
   * @param lowestNote the lowest note
   * @param group the group
   * @param intent the intent
   * @param routes where it goes
   * @param sends what is sent elsewhere
   * @param maxTruePeak the true-peak target
   * @param loudness the loudness target
   * @param listens the places to listen to
   */
  public Declarations {
    spills = List.copyOf(spills);
    routes = List.copyOf(routes);
    sends = List.copyOf(sends);
    listens = List.copyOf(listens);
  }

  /**
   * Returns the declared kind of source.
   *
   * @return the catalogue's entry, or empty
   */
  public Optional<SourceKind> sourceKind() {
    return source.map(Source::kind);
  }

  /**
   * A declared kind of source.
   *
   * @param kind the catalogue's entry
   * @param span where its word stands
   */
  public record Source(SourceKind kind, TextSpan span) {}

  /**
   * Something else that the microphone hears.
   *
   * @param what a kind of source or the name of a chain
   * @param level how much lower than the wanted sound it is, if said
   * @param span the whole statement
   */
  public record Spill(Name what, Optional<Decibels> level, TextSpan span) {}

  /**
   * A recording.
   *
   * @param file its path, from the folder of the text
   * @param fileSpan where the path stands
   * @param from the start of the passage, if one is named
   * @param to the end of the passage, if one is named
   */
  public record Take(
      String file, TextSpan fileSpan, Optional<TimeSpan> from, Optional<TimeSpan> to) {}

  /**
   * The lowest note.
   *
   * @param frequency its frequency
   * @param text as written, such as "E2"
   * @param span where it stands
   */
  public record LowestNote(Frequency frequency, String text, TextSpan span) {}

  /**
   * A way to a bus.
   *
   * @param bus the bus's name
   * @param fader the level of the fader; 0 dB where none is written
   * @param span the whole statement
   */
  public record Route(Name bus, Decibels fader, TextSpan span) {}

  /**
   * A send to a bus.
   *
   * @param bus the bus's name
   * @param level the level of the send
   * @param isPreFader whether the fader has no influence on it
   * @param span the whole statement
   */
  public record Send(Name bus, Decibels level, boolean isPreFader, TextSpan span) {}

  /**
   * A level to be reached or kept.
   *
   * @param level the level, in dBTP or LUFS
   * @param span where it stands
   */
  public record Target(Level level, TextSpan span) {}

  /**
   * A place to listen to.
   *
   * @param from where it begins
   * @param to where it ends, if it has a length
   * @param cue what to listen for
   * @param span the whole statement
   */
  public record Listen(TimeSpan from, Optional<TimeSpan> to, String cue, TextSpan span) {}
}
