package chainwright.app.render;

/** At what level a render is written. */
public enum LevelPolicy {
  /** As the chain makes it, unless it is much louder than its take. */
  HELD,
  /** As the chain makes it, however loud. */
  AS_WRITTEN,
  /** As loud as its take, so that both can be compared. */
  MATCHED
}
