package chainwright.engine.path;

import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import chainwright.notation.syntax.Section;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Map;

/**
 * The paths of the chains and buses of one state of the text, each built when it is first asked for
 * and then kept, since every chain asks for the buses after it. Safe for use by several threads;
 * two that ask at once may both build, and get the same.
 */
public final class Paths {

  private final PathBuilder builder;
  private final Map<Section, SignalPath> built =
      Collections.synchronizedMap(new IdentityHashMap<>());

  /**
   * Begins without a path.
   *
   * @param scope what the names mean
   */
  public Paths(Scope scope) {
    builder = new PathBuilder(scope);
  }

  /**
   * Returns a path.
   *
   * @param track the chain or bus
   * @return its path
   */
  public SignalPath of(Definition.Track track) {
    SignalPath known = built.get(track.section());
    if (known == null) {
      known = builder.build(track);
      built.put(track.section(), known);
    }
    return known;
  }
}
