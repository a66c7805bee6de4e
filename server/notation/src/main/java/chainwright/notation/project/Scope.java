package chainwright.notation.project;

import chainwright.notation.model.Definition;
import chainwright.quantity.Level;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the names in one file mean. Immutable. Of two definitions of a name the first holds. */
public final class Scope {

  private final List<SourceFile> files;
  private final Map<String, Definition.Preset> presets = new LinkedHashMap<>();
  private final Map<String, Definition.Track> tracks = new LinkedHashMap<>();
  private final List<Definition.Session> sessions = new ArrayList<>();

  Scope(List<SourceFile> files) {
    this.files = List.copyOf(files);
    for (SourceFile file : files) {
      for (Definition definition : file.definitions()) {
        if (definition instanceof Definition.Preset preset) {
          presets.putIfAbsent(preset.name().text(), preset);
        } else if (definition instanceof Definition.Track track) {
          tracks.putIfAbsent(track.name().text(), track);
        } else if (definition instanceof Definition.Session session) {
          sessions.add(session);
        }
      }
    }
  }

  /**
   * Returns the files whose definitions are seen.
   *
   * @return the file itself first, then those it imports
   */
  public List<SourceFile> files() {
    return files;
  }

  /**
   * Finds a preset.
   *
   * @param name its name
   * @return the preset, or empty
   */
  public Optional<Definition.Preset> preset(String name) {
    return Optional.ofNullable(presets.get(name));
  }

  /**
   * Returns the presets.
   *
   * @return all that are seen
   */
  public List<Definition.Preset> presets() {
    return List.copyOf(presets.values());
  }

  /**
   * Finds a chain or a bus.
   *
   * @param name its name
   * @return the chain or bus, or empty
   */
  public Optional<Definition.Track> track(String name) {
    return Optional.ofNullable(tracks.get(name));
  }

  /**
   * Finds a bus.
   *
   * @param name its name
   * @return the bus, or empty
   */
  public Optional<Definition.Track> bus(String name) {
    return track(name).filter(Definition.Track::isBus);
  }

  /**
   * Returns the chains and buses.
   *
   * @return all that are seen
   */
  public List<Definition.Track> tracks() {
    return List.copyOf(tracks.values());
  }

  /**
   * Returns the session that holds here: that of the file itself, else the first of an imported
   * file.
   *
   * @return the session, or empty
   */
  public Optional<Definition.Session> session() {
    return sessions.isEmpty() ? Optional.empty() : Optional.of(sessions.get(0));
  }

  /**
   * Returns the sample rate that holds here.
   *
   * @return the session's, or 48 kHz
   */
  public SampleRate sampleRate() {
    return session().flatMap(Definition.Session::sampleRate).orElse(SampleRate.DEFAULT);
  }

  /**
   * Returns the digital level of 0 dBu, if it is declared.
   *
   * @return the session's alignment, or empty
   */
  public Optional<Level> alignment() {
    return session().flatMap(Definition.Session::alignment);
  }
}
