package chainwright.app.cli;

import chainwright.app.plot.Plot;
import chainwright.app.plot.PlotTheme;
import chainwright.app.plot.SvgPlot;
import chainwright.app.plot.TextPlot;
import chainwright.app.view.Nominal;
import chainwright.app.view.Part;
import chainwright.app.view.StagePlots;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Draws what a chain or a stage does, or writes the numbers. */
@Command(
    name = "plot",
    header = "Draws what a chain or a stage does, or writes the numbers.",
    description = {
      "%nA filter or equaliser is drawn over frequency, with the chain up to here"
          + " dashed and the zones of the source; a stage that reacts to level as output"
          + " over input; one that saturates by its harmonics; a reverb or an echo by what is"
          + " left of a sound as time goes on. A drawing is what an editor shows on hover.%n"
    },
    optionListHeading = "%n",
    footerHeading = "%nExamples:%n",
    footer = {
      "  chainwright plot song.chain --chain lead               the whole chain",
      "  chainwright plot song.chain --chain lead --stage 2     its second line",
      "  chainwright plot song.chain --chain lead --stage bite  the one labelled so",
      "  chainwright plot song.chain --chain lead -o lead.png   a picture",
      "  chainwright plot song.chain --chain lead --stage 2 --at 80,1000",
      "                                         numbers, for checking",
      "",
      "Stages are numbered as the lines of the chain in the file, from 1: one that is",
      "bypassed counts, a preset is one line. What stands inside a block or a preset is",
      "counted there: 4.2 is the second line inside the fourth. A wrong number lists",
      "them all.",
      "",
      "The numbers of csv and json, every one with all its digits:",
      "  frequency   frequency_hz, magnitude_db, phase_rad (unwrapped), group_delay_s",
      "  level       input_dbfs, output_dbfs",
      "  harmonics   harmonic (1 is the tone itself), level_dbfs",
      "  time        time_s, level_db of a reverb or an echo, also low_level_db and",
      "              high_level_db; time_s, gain_db of a stage with attack and release",
      "json also says what each is."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:done", "2:wrong usage, or a file that cannot be read or written"})
final class PlotCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "The chain file.")
  private Path file;

  @Option(
      names = "--chain",
      paramLabel = "NAME",
      description = "The chain or bus; the only one by default.")
  private @Nullable String chain;

  @Option(
      names = "--stage",
      paramLabel = "LABEL|NUMBER",
      description = "One line of the chain; the whole chain by default.")
  private @Nullable String stage;

  @Option(
      names = "--axis",
      paramLabel = "AXIS",
      description =
          "What the plot runs over: frequency, level, harmonics or time; what tells most by"
              + " default.")
  private @Nullable PlotAxis axis;

  @Option(
      names = "--at",
      paramLabel = "NUMBER",
      converter = NumberArgument.class,
      split = ",",
      description = "Where to look: Hz, dBFS, numbers of harmonics or seconds, divided by commas.")
  private List<Double> at = List.of();

  @Option(
      names = "--tone",
      paramLabel = "HZ",
      converter = NumberArgument.class,
      description =
          "The sine whose harmonics are meant; the lowest note of the source by default,"
              + " or 100 Hz.")
  private @Nullable Double toneHz;

  @Option(
      names = "--tone-level",
      paramLabel = "DBFS",
      converter = NumberArgument.class,
      description = "Its level; -18 dBFS by default, the alignment level of EBU R 68.")
  private double toneDbfs = Nominal.USUAL.levelDbfs();

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description =
          "text, svg, png, csv or json; by default what the ending of the output file says,"
              + " else csv with --at and text without.")
  private @Nullable PlotFormat format;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Where to write; to standard output by default.")
  private @Nullable Path output;

  @Option(names = "--force", description = "Replaces an output file that exists already.")
  private boolean isForced;

  @Override
  public Integer call() throws IOException {
    OpenedChain opened = OpenedChain.open(file, chain);
    Optional<Part> part =
        stage == null ? Optional.empty() : Optional.of(PlotChoice.part(opened.outline(), stage));
    PlotSubject subject = new PlotSubject(opened.outline(), part);
    PlotAxis used = axis == null ? subject.usualAxis() : axis;
    PlotFormat written = written();
    if (written == PlotFormat.PNG && output == null) {
      throw wrong("a png is no text; name its file by `-o`");
    }
    byte[] content = content(subject, used, written);
    if (output == null) {
      spec.commandLine().getOut().print(new String(content, StandardCharsets.UTF_8));
      spec.commandLine().getOut().flush();
    } else {
      opened.refuseToWrite(output);
      WholeFile.write(output, content, isForced);
    }
    part.filter(Part::isBypassed).ifPresent(this::saySo);
    opened
        .troubles(OpenedChain.LEFT_OUT)
        .forEach(trouble -> spec.commandLine().getErr().println(trouble));
    return ChainwrightCommand.CLEAN;
  }

  private PlotFormat written() {
    PlotFormat written =
        Optional.ofNullable(format)
            .or(() -> Optional.ofNullable(output).map(this::byEnding))
            .orElse(at.isEmpty() ? PlotFormat.TEXT : PlotFormat.CSV);
    if (written.isDrawing() && !at.isEmpty()) {
      throw wrong("`--at` picks numbers, for csv and json; a drawing shows the whole curve");
    }
    return written;
  }

  private PlotFormat byEnding(Path file) {
    return PlotFormat.of(file)
        .orElseThrow(
            () ->
                wrong(
                    "`"
                        + file.getFileName()
                        + "` does not say what to write: let it end in .txt, .svg, .png, .csv or"
                        + " .json, or give `--format`"));
  }

  private byte[] content(PlotSubject subject, PlotAxis used, PlotFormat written)
      throws IOException {
    Tone tone = tone(subject, used);
    if (written == PlotFormat.PNG) {
      return PngPicture.of(SvgPlot.render(subject.draw(used, tone), PlotTheme.PAPER));
    }
    return text(subject, used, written, tone).getBytes(StandardCharsets.UTF_8);
  }

  private String text(PlotSubject subject, PlotAxis used, PlotFormat written, Tone tone)
      throws IOException {
    if (written.isDrawing()) {
      Plot plot = subject.draw(used, tone);
      return written == PlotFormat.SVG ? SvgPlot.render(plot) : TextPlot.render(plot);
    }
    NumberTable table = new PlotNumbers(subject, at).table(used, tone);
    return written == PlotFormat.CSV ? table.toCsv() : PlotJson.of(subject, used, tone, table);
  }

  private Tone tone(PlotSubject subject, PlotAxis used) throws IOException {
    boolean isMeant = used == PlotAxis.HARMONICS;
    if (!isMeant && (toneHz != null || toneDbfs != Nominal.USUAL.levelDbfs())) {
      throw wrong("`--tone` and `--tone-level` are for the axis of harmonics");
    }
    double nyquistHz = subject.path().rate().nyquist().hertz();
    if (toneHz != null && !(toneHz > 0 && toneHz < nyquistHz)) {
      throw wrong("`--tone` must lie between 0 Hz and " + nyquistHz + " Hz, but was " + toneHz);
    }
    if (!(toneDbfs >= -120 && toneDbfs <= 24)) {
      throw wrong("`--tone-level` must lie between -120 and 24 dBFS, but was " + toneDbfs);
    }
    double hertz =
        toneHz != null ? toneHz : subject.stage().map(StagePlots::toneHz).orElse(nyquistHz / 2);
    return new Tone(hertz, toneDbfs);
  }

  private void saySo(Part part) {
    spec.commandLine()
        .getErr()
        .println(
            "chainwright: "
                + part.number()
                + " `"
                + part.words()
                + "` is bypassed: shown is what it would do; the chain goes without it");
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
