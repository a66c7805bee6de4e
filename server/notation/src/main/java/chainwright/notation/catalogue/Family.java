package chainwright.notation.catalogue;

/** What a stage kind is for. */
public enum Family {
  /** Takes a region of the spectrum away. */
  FILTER,
  /** Reshapes the balance of the spectrum. */
  EQUALISER,
  /** Reacts to level. */
  DYNAMICS,
  /** Adds harmonics or bends the wave on purpose. */
  SATURATION,
  /** Changes level, polarity or place between the loudspeakers. */
  LEVEL,
  /** Moves the signal in time. */
  TIME,
  /** Adds a room or repeats. */
  SPACE,
  /** Removes what should not be there. */
  REPAIR,
  /** Prepares the file for where it goes. */
  DELIVERY,
  /** Arranges other stages: an insert, a send, parallel paths. */
  STRUCTURE
}
