package chainwright.app.cli;

import chainwright.app.audiofile.AudioFiles;
import chainwright.app.audiofile.AudioReader;
import chainwright.app.audiofile.FileKind;
import chainwright.app.audiofile.SampleKind;
import chainwright.app.render.LevelPolicy;
import chainwright.app.render.RenderOrder;
import chainwright.app.render.RenderProgress;
import chainwright.app.render.RenderReport;
import chainwright.app.render.TakeRenderer;
import chainwright.app.view.Outline;
import chainwright.engine.path.PathBuilder;
import chainwright.notation.model.Declarations;
import chainwright.notation.model.Definition;
import chainwright.quantity.SampleRate;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Processes a recording by a chain and writes the result to a new file. */
@Command(
    name = "render",
    header = "Processes a recording by a chain and writes a new file.",
    description = {
      "%nThe first frame of the file is that of the take, whatever the chain's latency;"
          + " what goes on sounding after the take is rendered until it has fallen by"
          + " 90 dB. The chain runs at the take's own sample rate. A take of one channel"
          + " becomes two where the chain has `pan`, `width` or `reverb`.%n",
      "A render that is more than 6 LU louder than its take, and louder than the chain's"
          + " `loudness`, is held at the loudness of the take.%n"
    },
    optionListHeading = "%n",
    footerHeading = "%nExamples:%n",
    footer = {
      "  chainwright render song.chain --chain lead -o lead.wav",
      "                                        the take that the chain names",
      "  chainwright render song.chain --take mic.wav -o out.wav --bits 24",
      "  chainwright render song.chain -o out.wav --from 0:31 --to 0:33",
      "  chainwright render song.chain -o dull.wav --without 2,air",
      "                                        line 2 and the one labelled air bypassed",
      "  chainwright render song.chain -o esses.wav --difference 3",
      "                                        what line 3 adds and takes away",
      "  chainwright render song.chain -o b.wav --level-match",
      "                                        to compare with the take, equally loud",
      "",
      "Lines are numbered as `chainwright plot` numbers them. A part is cut out of the",
      "render of the whole, and sounds as it does there.",
      "",
      "The take is never written to. The file appears when it is complete; an error or",
      "a full disk leaves nothing."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:written",
      "1:written, but not as asked: held at the take's level, matched only in part, or clipped",
      "2:nothing written: wrong usage, a stage that does not sound yet, or a file that"
          + " cannot be read or written"
    })
final class RenderCommand implements Callable<Integer> {

  /** What a recording may rise to where the chain says nothing [dBTP]. Source: EBU R 128. */
  private static final double USUAL_CEILING_DBTP = -1;

  @ParentCommand private ChainwrightCommand parent;

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "The chain file.")
  private Path file;

  @Option(
      names = "--chain",
      paramLabel = "NAME",
      description = "The chain or bus; the only one by default.")
  private @Nullable String chain;

  @Option(
      names = "--take",
      paramLabel = "IN",
      description = "The recording; the chain's `take` by default, and the part it names.")
  private @Nullable Path take;

  // The parser sets it, or ends.
  @SuppressWarnings("NullAway.Init")
  @Option(
      names = {"-o", "--output"},
      paramLabel = "OUT",
      required = true,
      description = "The file to write; its ending says what kind: .wav or .aiff.")
  private Path output;

  @Option(
      names = "--bits",
      paramLabel = "16|24|32f|64f",
      converter = BitsArgument.class,
      description = "How samples are stored: integers, or floats (f); 32f by default.")
  private SampleKind bits = SampleKind.ofFloat(32);

  @Option(
      names = "--from",
      paramLabel = "TIME",
      converter = TimeArgument.class,
      description = "Where in the take to begin, such as 0:31.2 or 31.2s.")
  private @Nullable Double fromSeconds;

  @Option(
      names = "--to",
      paramLabel = "TIME",
      converter = TimeArgument.class,
      description = "Where to end; there is no tail then.")
  private @Nullable Double toSeconds;

  @ArgGroup private @Nullable Lines lines;

  @ArgGroup private @Nullable LevelChoice level;

  @Option(names = "--force", description = "Replaces an output file that exists already.")
  private boolean isForced;

  /** Which lines of the chain are rendered. */
  static final class Lines {
    @Option(
        names = "--only",
        split = ",",
        paramLabel = "LINE",
        description = "Only these lines, by label or number, divided by commas.")
    private List<String> only = List.of();

    @Option(
        names = "--without",
        split = ",",
        paramLabel = "LINE",
        description = "All but these lines.")
    private List<String> without = List.of();

    @Option(
        names = "--difference",
        split = ",",
        paramLabel = "LINE",
        description = "What these lines change: the chain minus the chain without them.")
    private List<String> difference = List.of();
  }

  /** At what level the file is written. */
  static final class LevelChoice {
    @Option(
        names = "--level-match",
        description = "As loud as the take, as far as the true peak allows.")
    private boolean isMatched;

    @Option(names = "--as-written", description = "As the chain makes it, however loud.")
    private boolean isAsWritten;
  }

  @Override
  public Integer call() throws IOException {
    FileKind kind = kind();
    OpenedChain opened = OpenedChain.open(file, chain);
    refuseErrors(opened);
    Path input = take == null ? declaredTake(opened) : take;
    opened.refuseToWrite(output);
    if (Files.exists(output) && Files.exists(input) && Files.isSameFile(input, output)) {
      throw new IOException("`" + output + "` is the take, which is never written to");
    }
    try (AudioReader reader = AudioFiles.open(input)) {
      return render(opened, reader, kind);
    }
  }

  private int render(OpenedChain opened, AudioReader reader, FileKind kind) throws IOException {
    SampleRate rate = SampleRate.ofHertz(reader.format().sampleRateHz());
    Definition.Track track = opened.outline().path().track();
    Outline outline = Outline.of(track, new PathBuilder(opened.scope(), rate));
    RenderChoice choice = new RenderChoice(opened, outline, reader.format().channels() == 1);
    RenderPart part = part(track.declarations(), reader, rate);
    RenderOrder order =
        new RenderOrder(
            choice.design(way(), names()),
            choice.isMadeStereo(),
            part.fromFrame(),
            part.toFrame(),
            policy(),
            level(track.declarations().loudness()),
            level(track.declarations().maxTruePeak()).orElse(USUAL_CEILING_DBTP),
            output,
            kind,
            bits,
            isForced);
    warn(opened, outline, reader, rate);
    RenderSheet sheet = new RenderSheet(order, run(reader, order), rate.hertz());
    sheet.lines().forEach(spec.commandLine().getOut()::println);
    if (sheet.truePeakDbtp() > 0) {
      say(
          String.format(
              Locale.ROOT,
              "the true peak lies %.1f dB above full scale: converters and coders will clip it,"
                  + " loudly on headphones; turn the chain down (EBU R 128)",
              sheet.truePeakDbtp()));
    }
    long clipped = sheet.report().written().clippedSamples();
    if (clipped > 0) {
      say(
          clipped
              + " samples went over full scale and were clipped; lower the level, or write"
              + " --bits 32f");
    }
    return sheet.isAsAsked() ? ChainwrightCommand.CLEAN : ChainwrightCommand.FINDINGS;
  }

  private RenderReport run(AudioReader reader, RenderOrder order) throws IOException {
    if (!parent.terminal().isWatched()) {
      return TakeRenderer.render(reader, order, RenderProgress.NONE);
    }
    ProgressBar bar = new ProgressBar(spec.commandLine().getErr());
    try {
      return TakeRenderer.render(reader, order, bar);
    } finally {
      bar.clear();
    }
  }

  private void warn(OpenedChain opened, Outline outline, AudioReader reader, SampleRate rate) {
    reader.warnings().forEach(this::say);
    SampleRate own = opened.scope().sampleRate();
    boolean isDeclared =
        opened.scope().session().flatMap(Definition.Session::sampleRate).isPresent();
    if (isDeclared && own.hertz() != rate.hertz()) {
      say("the take has " + rate + ", the session says " + own + "; rendered at " + rate);
    }
    boolean isDithered =
        outline.path().stages().stream().anyMatch(stage -> stage.word().equals("dither"));
    if (bits.isInteger() && !isDithered) {
      say(
          String.format(
              Locale.ROOT,
              "%s without `dither`: rounding distorts what is very quiet; end the chain with"
                  + " `dither %1$s`, or write --bits 32f",
              bits));
    }
  }

  private void say(String sentence) {
    PrintWriter err = spec.commandLine().getErr();
    err.println("chainwright: " + sentence);
  }

  private static void refuseErrors(OpenedChain opened) throws IOException {
    boolean isPresetMissing =
        opened.outline().all().stream()
            .anyMatch(part -> part.words().startsWith("apply ") && part.elements().isEmpty());
    if (isPresetMissing || !opened.troubles().isEmpty()) {
      throw new IOException(
          "the text has errors, so that not everything written would be heard; see `chainwright"
              + " check "
              + opened.file()
              + "`");
    }
  }

  private FileKind kind() {
    return FileKind.ofName(output)
        .orElseThrow(
            () ->
                wrong(
                    "the ending of `"
                        + output
                        + "` says no kind of file that can be written; .wav and .aiff do"));
  }

  private static Path declaredTake(OpenedChain opened) throws IOException {
    Definition.Track track = opened.outline().path().track();
    Optional<Declarations.Take> declared = track.declarations().take();
    if (declared.isEmpty()) {
      throw new IOException(
          track.isBus()
              ? "the bus `"
                  + track.name().text()
                  + "` is fed by chains, and a whole session cannot be rendered yet; name the sound"
                  + " that it gets by `--take`"
              : "`" + track.name().text() + "` names no `take`; name the recording by `--take`");
    }
    return Path.of(opened.document().file().resolve(declared.get().file()));
  }

  /** The declared part belongs to the declared take. */
  private RenderPart part(Declarations declarations, AudioReader reader, SampleRate rate)
      throws IOException {
    Optional<Declarations.Take> declared =
        take == null && fromSeconds == null && toSeconds == null
            ? declarations.take()
            : Optional.empty();
    double from =
        fromSeconds != null
            ? fromSeconds
            : declared.flatMap(Declarations.Take::from).map(time -> time.seconds()).orElse(0.0);
    OptionalDouble to =
        toSeconds != null
            ? OptionalDouble.of(toSeconds)
            : declared
                .flatMap(Declarations.Take::to)
                .map(time -> OptionalDouble.of(time.seconds()))
                .orElse(OptionalDouble.empty());
    return RenderPart.of(from, to, reader.frames(), rate);
  }

  private RenderChoice.Way way() {
    if (lines == null) {
      return RenderChoice.Way.WHOLE;
    }
    return !lines.only.isEmpty()
        ? RenderChoice.Way.ONLY
        : !lines.without.isEmpty() ? RenderChoice.Way.WITHOUT : RenderChoice.Way.DIFFERENCE;
  }

  private List<String> names() {
    if (lines == null) {
      return List.of();
    }
    return !lines.only.isEmpty()
        ? lines.only
        : !lines.without.isEmpty() ? lines.without : lines.difference;
  }

  private LevelPolicy policy() {
    if (level != null && level.isMatched) {
      return LevelPolicy.MATCHED;
    }
    return level != null && level.isAsWritten ? LevelPolicy.AS_WRITTEN : LevelPolicy.HELD;
  }

  private static OptionalDouble level(Optional<Declarations.Target> target) {
    return target
        .map(declared -> OptionalDouble.of(declared.level().baseValue()))
        .orElse(OptionalDouble.empty());
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
