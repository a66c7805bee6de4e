package chainwright.app.cli;

import chainwright.app.audiofile.UnknownAudioException;
import chainwright.app.report.MeasuredRecording;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Measures recordings. */
@Command(
    name = "measure",
    header = "Measures recordings: loudness, peaks, levels, clipping.",
    description = {
      "%nLoudness is how loud a recording seems: integrated over the whole, the loudest 0.4"
          + " and 3 seconds, and the range from soft to loud passages (ITU-R BS.1770-5, EBU"
          + " Tech 3341 and 3342).%n",
      "The true peak is how high the signal rises between its samples: as the standard"
          + " reads it, and more finely. RMS levels are sine-referenced: a sine that just"
          + " fits has 0 dBFS (AES17). The noise floor is what a tenth of all stretches of"
          + " 50 ms stay below. Clipped are three samples or more in a row at full scale; in"
          + " floating point, which can hold more, those at or above it. A correlation of 1"
          + " is the same on both sides, 0 wide, -1 vanishes in mono.%n",
      "A dash stands for what the recording is too short for; \"silence\" for no level at"
          + " all. The recordings are only read.%n"
    },
    optionListHeading = "%n",
    footerHeading = "%nExamples:%n",
    footer = {
      "  chainwright measure take.wav                     one recording",
      "  chainwright measure *.wav                        several",
      "  chainwright measure --format csv *.wav > all.csv a line a channel",
      "  chainwright measure --format json take.wav       for another program"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:measured",
      "2:wrong usage, or a file that cannot be read; the others are measured"
    })
final class MeasureCommand implements Callable<Integer> {

  /** How readings are written. */
  enum Format {
    /** For people. */
    TEXT,
    /** For programs. */
    JSON,
    /** For tables. */
    CSV
  }

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", arity = "1..*", description = "Recordings.")
  private List<Path> files;

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      description = "text, json or csv; text by default.")
  private Format format = Format.TEXT;

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    List<MeasuredRecording> measured = new ArrayList<>();
    boolean isTrouble = false;
    for (Path file : files) {
      try {
        MeasuredRecording recording = MeasuredRecording.measure(file);
        measured.add(recording);
        recording
            .warnings()
            .forEach(warning -> err.println("chainwright: `" + file + "`: " + warning));
      } catch (UnknownAudioException e) {
        isTrouble = true;
        err.println(
            "chainwright: " + new SeemingFile(file).insteadOfARecording().orElse(e.getMessage()));
      } catch (IOException e) {
        isTrouble = true;
        err.println("chainwright: " + e.getMessage());
      }
    }
    if (!measured.isEmpty()) {
      PrintWriter out = spec.commandLine().getOut();
      out.print(text(measured));
      out.flush();
    }
    return isTrouble ? ChainwrightCommand.TROUBLE : ChainwrightCommand.CLEAN;
  }

  private String text(List<MeasuredRecording> measured) {
    return switch (format) {
      case TEXT -> measured.stream().map(MeasureSheet::of).collect(Collectors.joining("\n"));
      case JSON -> MeasureJson.of(measured);
      case CSV -> MeasureCsv.of(measured);
    };
  }
}
