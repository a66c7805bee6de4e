package chainwright.app.cli;

import chainwright.app.audiofile.FileKind;
import chainwright.app.audiofile.SampleKind;
import chainwright.app.render.LevelPolicy;
import chainwright.app.render.MixRenderer;
import chainwright.app.render.RenderOrder;
import chainwright.app.render.RenderProgress;
import chainwright.app.render.RenderReport;
import chainwright.app.render.StemOrder;
import chainwright.engine.mix.MixOrder;
import chainwright.engine.mix.MixPlan;
import chainwright.engine.mix.StageMeters;
import chainwright.engine.sound.StageTap;
import chainwright.notation.model.Definition;
import chainwright.quantity.SampleRate;
import java.io.IOException;
import java.io.PrintWriter;
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

/** Renders a chain or a whole session to a new file. */
@Command(
    name = "render",
    header = "Renders a chain or a whole session to a new file.",
    customSynopsis = "chainwright render FILE [--chain NAME [--take IN]] -o OUT [...]",
    description = {
      "%nOf a file with a mix bus the whole session is rendered: every chain with its take,"
          + " faders, sends and buses, all paths equally late. `--chain` renders one chain"
          + " or bus.%n",
      "The first frame of the file is that of the take, whatever the chain's latency;"
          + " what goes on sounding after the take is rendered until it has fallen by"
          + " 90 dB. A take of one channel becomes two where the chain has `pan`,"
          + " `width` or `reverb`.%n",
      "Everything runs at the takes' own sample rate, up to a `sample-rate-conversion`."
          + " Takes of different rates are converted to that of the session, or to the"
          + " highest of them. `--rate` converts last, before a `dither` at the end"
          + " (flat to 0.45 of the lower rate, 150 dB down from half of it on), and"
          + " stems, too; without it those keep the rate of the takes.%n",
      "A render that is more than 6 LU louder than its take, of several the loudest, and"
          + " louder than the chain's `loudness`, is held at the loudness of that take.%n",
      "Of the whole file it is said how far it is from the chain's `loudness`, beyond"
          + " 0.5 LU, and how far over its `max-true-peak`; of a part, or matched to its"
          + " take, only the latter, and nothing where stages are left out.%n"
    },
    optionListHeading = "%n",
    footerHeading = "%nExamples:%n",
    footer = {
      "  chainwright render song.chain -o mix.wav      the whole session",
      "  chainwright render song.chain -o mix.wav --stems stems",
      "                                        also what goes into each bus",
      "  chainwright render song.chain --chain lead -o lead.wav",
      "                                        the take that the chain names",
      "  chainwright render song.chain --take mic.wav -o out.wav --bits 24",
      "  chainwright render song.chain -o out.wav --from 0:31 --to 0:33",
      "  chainwright render song.chain -o cd.wav --rate 44100 --bits 16",
      "                                        converted last, before the dither",
      "  chainwright render song.chain -o dull.wav --without 2,air",
      "                                        stages 2 and air bypassed",
      "  chainwright render song.chain -o esses.wav --difference 3",
      "                                        what stage 3 adds and takes away",
      "  chainwright render song.chain -o b.wav --level-match",
      "                                        to compare with the take, equally loud",
      "",
      "Stages are counted as `chainwright plot` counts them; of a session, those of",
      "its mix bus are meant. What `--from` and `--to` name is cut out of the render of",
      "the whole, and sounds as it does there, without a fade at either end. The part",
      "that a `take` names is what goes into the chain: it comes and goes in 10 ms, and",
      "sounds on.",
      "",
      "The take is never written to. The file appears when it is complete; an error or",
      "a full disk leaves nothing."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:written",
      "1:written, but not as asked: held at the take's level, matched only in part, clipped, off"
          + " the declared `loudness` or over `max-true-peak`, or from a take that is damaged or"
          + " cut short",
      "2:nothing written: wrong usage, a stage that does not sound yet, or a file that"
          + " cannot be read or written"
    })
final class RenderCommand implements Callable<Integer> {

  @ParentCommand private ChainwrightCommand parent;

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "The chain file.")
  private Path file;

  @Option(
      names = "--chain",
      paramLabel = "NAME",
      description = "The chain or bus; by default the only one, or the mix bus.")
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
      description = "The file to write; its ending says what kind: .wav, .aiff or .flac.")
  private Path output;

  @Option(
      names = "--bits",
      paramLabel = "16|24|32f|64f",
      converter = BitsArgument.class,
      description = "How samples are stored: integers, or floats (f); 32f by default.")
  private SampleKind bits = SampleKind.ofFloat(32);

  @Option(
      names = "--rate",
      paramLabel = "HZ",
      converter = RateArgument.class,
      description =
          "The file's sample rate, such as 48000 or 44.1kHz; by default that of the"
              + " takes, or what the chain converts to.")
  private @Nullable SampleRate rate;

  @Option(
      names = "--from",
      paramLabel = "TIME",
      converter = TimeArgument.class,
      description = "Where in the take to begin, such as 0:31.2 or 31.2s.")
  private @Nullable Double from;

  @Option(
      names = "--to",
      paramLabel = "TIME",
      converter = TimeArgument.class,
      description = "Where to end; there is no tail then.")
  private @Nullable Double to;

  @ArgGroup private @Nullable Stages stages;

  @ArgGroup private @Nullable LevelChoice level;

  @Option(
      names = "--stems",
      paramLabel = "DIR",
      description = "Also writes what goes into each bus, a folder a bus, a file a chain.")
  private @Nullable Path stems;

  @Option(
      names = "--threads",
      paramLabel = "N",
      converter = CountArgument.class,
      description = "How many threads work; as many as the machine has by default.")
  private @Nullable Integer threads;

  @Option(names = "--force", description = "Replaces an output file that exists already.")
  private boolean isForced;

  /** Which stages of the chain are rendered. */
  static final class Stages {
    @Option(
        names = "--only",
        split = ",",
        paramLabel = "STAGE",
        description = "Only these stages, by label or number, divided by commas.")
    private List<String> only = List.of();

    @Option(
        names = "--without",
        split = ",",
        paramLabel = "STAGE",
        description = "All but these stages.")
    private List<String> without = List.of();

    @Option(
        names = "--difference",
        split = ",",
        paramLabel = "STAGE",
        description = "What these stages change: the chain minus the chain without them.")
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
    RenderSubject written = RenderSubject.of(file, chain, take != null);
    written.opened().refuseToWrite(output);
    RenderChoice asWritten = choice(written);
    MixOrder order = written.order(asWritten);
    RenderErrors.refuse(written, order);
    RenderTakes.Given given =
        new RenderTakes.Given(Optional.ofNullable(take), optional(from), optional(to));
    try (RenderTakes takes = RenderTakes.open(written, order, given, output)) {
      RenderSubject subject = written.at(takes.rate(written.rate()));
      StageMeters meters = new StageMeters();
      MixPlan plan =
          RenderPlan.of(
              subject,
              choice(subject),
              order,
              takes,
              fileRate(takes),
              subject.isFed() ? meters : StageTap.NONE);
      RenderOrder made = order(subject, plan, kind);
      warn(subject, takes, plan);
      RenderSheet sheet = new RenderSheet(made, run(takes, made), expected(subject));
      say(sheet, new DynamicsSheet(subject, meters));
      takes.newWarnings().forEach(this::say);
      subject.opened().troubles("").forEach(spec.commandLine().getErr()::println);
      return sheet.isAsAsked() && takes.areWhole()
          ? ChainwrightCommand.CLEAN
          : ChainwrightCommand.FINDINGS;
    }
  }

  private Optional<SampleRate> fileRate(RenderTakes takes) {
    if (rate != null && takes.isUneven()) {
      throw wrong("a take of no whole number of hertz cannot be converted; leave `--rate` out");
    }
    return Optional.ofNullable(rate);
  }

  private int threadCount() {
    return threads == null ? Runtime.getRuntime().availableProcessors() : threads;
  }

  private RenderChoice choice(RenderSubject subject) throws IOException {
    return RenderChoice.of(subject.outline(subject.track()), way(), names());
  }

  private RenderOrder order(RenderSubject subject, MixPlan plan, FileKind kind) throws IOException {
    if (stems != null && !subject.isFed()) {
      throw wrong("stems are of a bus; `" + subject.track().name().text() + "` is a chain");
    }
    double hertz = subject.rate().hertz();
    long end = plan.target().endFrame();
    long fromFrame = from != null ? Math.round(from * hertz) : plan.startFrame();
    long toFrame = to != null ? Math.round(to * hertz) : end;
    if (fromFrame > toFrame || toFrame > end) {
      throw new IOException(
          String.format(
              Locale.ROOT,
              "the part must lie within the session, which is %.3f s long, but is from %.3f s to"
                  + " %.3f s",
              end / hertz,
              fromFrame / hertz,
              toFrame / hertz));
    }
    return new RenderOrder(
        plan,
        hertz,
        fromFrame,
        toFrame,
        policy(),
        subject.declared().lufs(),
        subject.declared().dbtp(),
        output,
        kind,
        bits,
        isForced,
        stems(subject),
        threadCount());
  }

  private Optional<StemOrder> stems(RenderSubject subject) {
    SampleRate own = subject.rate();
    return stems == null
        ? Optional.empty()
        : Optional.of(new StemOrder(stems, own, rate == null ? own : rate));
  }

  private void say(RenderSheet sheet, DynamicsSheet dynamics) {
    PrintWriter out = spec.commandLine().getOut();
    sheet.lines().forEach(out::println);
    dynamics.lines().forEach(out::println);
    sheet.cautions().forEach(this::say);
  }

  private RenderReport run(RenderTakes takes, RenderOrder order) throws IOException {
    if (!parent.terminal().isWatched()) {
      return MixRenderer.render(takes.readers(), order, RenderProgress.NONE);
    }
    ProgressBar bar = new ProgressBar(spec.commandLine().getErr());
    try {
      return MixRenderer.render(takes.readers(), order, bar);
    } finally {
      bar.clear();
    }
  }

  private void warn(RenderSubject subject, RenderTakes takes, MixPlan plan) {
    takes.newWarnings().forEach(this::say);
    takes
        .silentChains()
        .forEach(name -> say("`" + name + "` names no `take` and is silent in this render"));
    takes.conversions().forEach(this::say);
    SampleRate own = subject.scope().sampleRate();
    SampleRate common = subject.rate();
    boolean isDeclared =
        subject.scope().session().flatMap(Definition.Session::sampleRate).isPresent();
    if (isDeclared && own.hertz() != common.hertz()) {
      say("the take has " + common + ", the session says " + own + "; processed at " + common);
    }
    boolean isDithered =
        plan.target().path().stages().stream().anyMatch(stage -> stage.word().equals("dither"));
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

  private FileKind kind() {
    return FileKind.ofName(output)
        .orElseThrow(
            () ->
                wrong(
                    "the ending of `"
                        + output
                        + "` says no kind of file that can be written; .wav, .aiff and .flac do"));
  }

  private static OptionalDouble optional(@Nullable Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  private RenderChoice.Way way() {
    if (stages == null) {
      return RenderChoice.Way.WHOLE;
    }
    return !stages.only.isEmpty()
        ? RenderChoice.Way.ONLY
        : !stages.without.isEmpty() ? RenderChoice.Way.WITHOUT : RenderChoice.Way.DIFFERENCE;
  }

  private List<String> names() {
    if (stages == null) {
      return List.of();
    }
    return !stages.only.isEmpty()
        ? stages.only
        : !stages.without.isEmpty() ? stages.without : stages.difference;
  }

  private LevelPolicy policy() {
    if (level != null && level.isMatched) {
      return LevelPolicy.MATCHED;
    }
    return level != null && level.isAsWritten ? LevelPolicy.AS_WRITTEN : LevelPolicy.HELD;
  }

  private DeclaredLevels expected(RenderSubject subject) {
    boolean isWhole = from == null && to == null && policy() != LevelPolicy.MATCHED;
    return subject.declared().expected(stages == null, isWhole);
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
