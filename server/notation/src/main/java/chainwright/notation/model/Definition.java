package chainwright.notation.model;

import chainwright.notation.catalogue.SourceKind;
import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextSpan;
import chainwright.quantity.Level;
import chainwright.quantity.SampleRate;
import java.util.List;
import java.util.Optional;

/** What stands at the top of a file. Each section holds at most one. */
public sealed interface Definition {

  /**
   * Returns the section that holds it; its spans count from that section's start.
   *
   * @return the section
   */
  Section section();

  /**
   * Returns its first line, without the block.
   *
   * @return the span
   */
  TextSpan lineSpan();

  /**
   * Returns all of it.
   *
   * @return the span
   */
  TextSpan span();

  /**
   * The definitions of another file, made known here.
   *
   * @param path the other file, from the folder of this one
   * @param pathSpan where the path stands
   * @param section its section
   * @param lineSpan its line
   * @param span the same
   */
  record Import(String path, TextSpan pathSpan, Section section, TextSpan lineSpan, TextSpan span)
      implements Definition {}

  /**
   * What holds for all chains of a session.
   *
   * @param title its title, or empty text
   * @param sampleRate the sample rate, if said
   * @param alignment the digital level that 0 dBu stands for, if said
   * @param mainsHz the frequency of the mains [Hz], if said
   * @param tempoBpm the tempo [beats/min], if said
   * @param listeners for whom it is played: "adults" or "minors", if said
   * @param intent what all chains are meant to sound like that do not say their own, if said
   * @param notes its notes
   * @param section its section
   * @param lineSpan its first line
   * @param span all of it
   */
  record Session(
      String title,
      Optional<SampleRate> sampleRate,
      Optional<Level> alignment,
      Optional<Double> mainsHz,
      Optional<Double> tempoBpm,
      Optional<String> listeners,
      Optional<Name> intent,
      List<Note> notes,
      Section section,
      TextSpan lineSpan,
      TextSpan span)
      implements Definition {

    /**
     * Copies the notes.
     *
     * @param title its title
     * @param sampleRate the sample rate
     * @param alignment the alignment level
     * @param mainsHz the mains frequency [Hz]
     * @param tempoBpm the tempo [beats/min]
     * @param listeners for whom it is played
     * @param intent what chains are meant to sound like
     * @param notes its notes
     * @param section its section
     * @param lineSpan its first line
     * @param span all of it
     */
    public Session {
      notes = List.copyOf(notes);
    }
  }

  /**
   * Stages under a name, to be applied in chains.
   *
   * @param name its name
   * @param title its title, or empty text
   * @param source the kind of source it is made for, if said
   * @param steps its steps
   * @param clauses notes and rules broken on purpose
   * @param section its section
   * @param lineSpan its first line
   * @param span all of it
   */
  record Preset(
      Name name,
      String title,
      Optional<SourceKind> source,
      List<Step> steps,
      Clauses clauses,
      Section section,
      TextSpan lineSpan,
      TextSpan span)
      implements Definition {

    /**
     * Copies the steps.
     *
     * @param name its name
     * @param title its title
     * @param source the kind of source
     * @param steps its steps
     * @param clauses notes and deliberate rules
     * @param section its section
     * @param lineSpan its first line
     * @param span all of it
     */
    public Preset {
      steps = List.copyOf(steps);
    }
  }

  /**
   * A chain or a bus.
   *
   * @param isBus whether it is a bus
   * @param name its name
   * @param title its title, or empty text
   * @param declarations what it says of itself
   * @param steps its steps
   * @param clauses notes and rules broken on purpose
   * @param section its section
   * @param lineSpan its first line
   * @param span all of it
   */
  record Track(
      boolean isBus,
      Name name,
      String title,
      Declarations declarations,
      List<Step> steps,
      Clauses clauses,
      Section section,
      TextSpan lineSpan,
      TextSpan span)
      implements Definition {

    /**
     * Copies the steps.
     *
     * @param isBus whether it is a bus
     * @param name its name
     * @param title its title
     * @param declarations what it says of itself
     * @param steps its steps
     * @param clauses notes and deliberate rules
     * @param section its section
     * @param lineSpan its first line
     * @param span all of it
     */
    public Track {
      steps = List.copyOf(steps);
    }
  }
}
