package chainwright.app.cli;

import chainwright.app.audiofile.AudioFiles;
import chainwright.app.audiofile.AudioReader;
import chainwright.app.audiofile.ConvertedReader;
import chainwright.app.audiofile.RepairedReader;
import chainwright.engine.mix.MixOrder;
import chainwright.engine.mix.MixTake;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import chainwright.quantity.SampleRate;
import chainwright.quantity.TimeSpan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;

/**
 * The takes of all chains that are to be heard, open for reading, all of one sample rate: those of
 * another are converted to it.
 */
final class RenderTakes implements AutoCloseable {

  private final Map<String, AudioReader> readers = new LinkedHashMap<>();
  private final Map<String, MixTake> parts = new LinkedHashMap<>();
  private final List<String> silent = new ArrayList<>();
  private final List<String> converted = new ArrayList<>();
  private final Set<String> warned = new LinkedHashSet<>();

  /**
   * What the command line says of the take of the chain that is meant.
   *
   * @param file the recording, in place of the declared one
   * @param fromSeconds where to begin, in place of what is declared
   * @param toSeconds where to end
   */
  record Given(Optional<Path> file, OptionalDouble fromSeconds, OptionalDouble toSeconds) {

    boolean isNothing() {
      return file.isEmpty() && fromSeconds.isEmpty() && toSeconds.isEmpty();
    }
  }

  private RenderTakes() {}

  /**
   * Opens them.
   *
   * @param subject what is meant
   * @param order the chains and buses
   * @param given what the command line says
   * @param output the file that will be written, which must be none of them
   * @return the takes, with the parts that are declared; that on the command line is one of the
   *     render, which must lie within the take where it is that of one chain
   * @throws IOException if one cannot be read, or has no such part
   */
  static RenderTakes open(RenderSubject subject, MixOrder order, Given given, Path output)
      throws IOException {
    RenderTakes takes = new RenderTakes();
    try {
      for (Definition.Track track : order.tracks()) {
        boolean isMeant = subject.isMeant(track) && !subject.isFed();
        takes.open(subject.scope(), track, isMeant ? Optional.of(given) : Optional.empty(), output);
      }
      takes.convertToOneRate(subject.scope());
      for (Definition.Track track : order.tracks()) {
        boolean isMeant = subject.isMeant(track) && !subject.isFed();
        takes.divide(track, isMeant ? Optional.of(given) : Optional.empty());
      }
      return takes;
    } catch (IOException | RuntimeException e) {
      takes.close();
      throw e;
    }
  }

  private void open(Scope scope, Definition.Track track, Optional<Given> given, Path output)
      throws IOException {
    Optional<Declarations.Take> declared = track.declarations().take();
    Optional<Path> file =
        given
            .flatMap(Given::file)
            .or(() -> declared.map(take -> Path.of(resolve(scope, track, take.file()))));
    String name = track.name().text();
    if (file.isEmpty()) {
      if (given.isPresent()) {
        throw new IOException("`" + name + "` names no `take`; name the recording by `--take`");
      }
      if (!track.isBus()) {
        silent.add(name);
      }
      return;
    }
    if (Files.exists(output) && Files.exists(file.get()) && Files.isSameFile(file.get(), output)) {
      throw new IOException("`" + output + "` is the take, which is never written to");
    }
    readers.put(name, new RepairedReader(AudioFiles.open(file.get())));
  }

  private void divide(Definition.Track track, Optional<Given> given) throws IOException {
    String name = track.name().text();
    AudioReader reader = readers.get(name);
    if (reader == null) {
      return;
    }
    Optional<Declarations.Take> declared = track.declarations().take();
    SampleRate rate = SampleRate.ofHertz(reader.format().sampleRateHz());
    boolean isDeclaredPart = given.isEmpty() || given.get().isNothing();
    RenderPart part =
        RenderPart.of(
            isDeclaredPart
                ? seconds(declared.flatMap(Declarations.Take::from))
                : given.get().fromSeconds(),
            isDeclaredPart
                ? seconds(declared.flatMap(Declarations.Take::to))
                : given.get().toSeconds(),
            reader.frames(),
            rate);
    MixTake whole =
        new MixTake(reader.format().channels(), reader.frames(), 0, OptionalLong.empty());
    // A part on the command line is one of the render, not of what goes into the chain.
    parts.put(
        name,
        isDeclaredPart
            ? new MixTake(whole.channelCount(), whole.frames(), part.fromFrame(), part.toFrame())
            : whole);
  }

  private static OptionalDouble seconds(Optional<TimeSpan> time) {
    return time.map(one -> OptionalDouble.of(one.seconds())).orElse(OptionalDouble.empty());
  }

  /** A path counts from the folder of the file that it is written in. */
  private static String resolve(Scope scope, Definition.Track track, String path) {
    return scope.files().stream()
        .filter(file -> file.tree().sections().stream().anyMatch(one -> one == track.section()))
        .findFirst()
        .map(file -> file.resolve(path))
        .orElse(path);
  }

  /** Where the rates differ, that of the session counts, or the highest where it says none. */
  private void convertToOneRate(Scope scope) throws IOException {
    double[] rates =
        readers.values().stream()
            .mapToDouble(one -> one.format().sampleRateHz())
            .distinct()
            .sorted()
            .toArray();
    if (rates.length < 2) {
      return;
    }
    Optional<SampleRate> declared =
        scope.session().flatMap(Definition.Session::sampleRate).map(any -> scope.sampleRate());
    SampleRate common = declared.orElseGet(() -> SampleRate.ofHertz(rates[rates.length - 1]));
    for (Map.Entry<String, AudioReader> entry : readers.entrySet()) {
      SampleRate own = SampleRate.ofHertz(entry.getValue().format().sampleRateHz());
      if (!own.equals(common)) {
        try {
          entry.setValue(ConvertedReader.of(entry.getValue(), common));
        } catch (IllegalArgumentException noWholeRate) {
          throw new IOException(
              "the takes have different sample rates, of which that of `"
                  + entry.getKey()
                  + "` cannot be converted: "
                  + noWholeRate.getMessage(),
              noWholeRate);
        }
        converted.add(
            "the take of `"
                + entry.getKey()
                + "` has "
                + own
                + "; converted to "
                + common
                + (declared.isPresent() ? ", the session's rate" : ", the highest of the takes"));
      }
    }
  }

  /** Returns what was converted to one rate, a sentence a take. */
  List<String> conversions() {
    return converted;
  }

  /** Returns the rate of all of them, or another where there is none. */
  SampleRate rate(SampleRate otherwise) {
    return readers.values().stream()
        .findFirst()
        .map(reader -> SampleRate.ofHertz(reader.format().sampleRateHz()))
        .orElse(otherwise);
  }

  /**
   * Asks whether the rate of a take is no whole number of hertz, so that it cannot be converted.
   */
  boolean isUneven() {
    return readers.values().stream()
        .mapToDouble(reader -> reader.format().sampleRateHz())
        .anyMatch(hertz -> hertz != Math.rint(hertz));
  }

  Map<String, AudioReader> readers() {
    return readers;
  }

  Map<String, MixTake> parts() {
    return parts;
  }

  /** Returns what is wrong with the takes as far as they have been read, each only once. */
  List<String> newWarnings() {
    List<String> fresh = new ArrayList<>();
    readers.forEach(
        (name, reader) ->
            reader.warnings().stream()
                .map(warning -> name + ": " + warning)
                .filter(warned::add)
                .forEach(fresh::add));
    return fresh;
  }

  /** Asks whether all that the takes promise is there and sounds, as far as they have been read. */
  boolean areWhole() {
    return readers.values().stream().allMatch(AudioReader::isWhole);
  }

  /** Returns the chains that should be heard and name no take. */
  List<String> silentChains() {
    return silent;
  }

  @Override
  public void close() throws IOException {
    for (AudioReader reader : readers.values()) {
      reader.close();
    }
  }
}
