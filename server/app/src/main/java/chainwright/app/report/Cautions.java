package chainwright.app.report;

import chainwright.dsp.loudness.ChannelLevels;
import chainwright.dsp.loudness.ClippedRuns;
import chainwright.dsp.loudness.SignalReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What to be careful of with a recording; only what applies to it. */
public final class Cautions {

  /** Source: EBU R 128 (2023): the maximum permitted true peak of a programme [dBTP]. */
  private static final double HIGHEST_TRUE_PEAK_DBTP = -1;

  private static final double SHORTEST_FOR_RANGE_SECONDS = 60;

  private Cautions() {}

  /**
   * Returns the cautions for a recording.
   *
   * @param recording the recording
   * @return a sentence each, none if nothing applies
   */
  public static List<String> of(MeasuredRecording recording) {
    List<String> cautions = new ArrayList<>();
    SignalReading reading = recording.reading();
    double peak = Math.max(reading.annex2Dbtp(), reading.fineDbtp());
    if (peak > HIGHEST_TRUE_PEAK_DBTP) {
      cautions.add(
          String.format(
              Locale.ROOT,
              "the true peak of %.2f dBTP lies above -1 dBTP: converters and coders may clip it,"
                  + " which on headphones is close to the ear; turn it down (EBU R 128)",
              peak));
    }
    for (int c = 0; c < reading.levels().size(); c++) {
      ChannelLevels levels = reading.levels().get(c);
      if (levels.clipped().count() > 0) {
        cautions.add(clipped(recording.channelName(c), levels.clipped(), recording));
      }
    }
    if (reading.rejectedCount() > 0) {
      cautions.add(
          counted(reading.rejectedCount(), "sample")
              + " held no number, or one more than 200 dB above full scale, and was measured as"
              + " silence: playing the file can make a loud click");
    }
    if (!Double.isNaN(reading.loudness().rangeLu())
        && recording.seconds() < SHORTEST_FOR_RANGE_SECONDS) {
      cautions.add(
          "the loudness range says little about recordings shorter than a minute (EBU R 128)");
    }
    return cautions;
  }

  /** Integers end at full scale; what floating point holds there need not have been cut. */
  private static String clipped(String channel, ClippedRuns runs, MeasuredRecording recording) {
    boolean isCut = recording.format().samples().isInteger();
    return "channel "
        + channel
        + (isCut ? " is clipped: " : " reaches full scale: ")
        + counted(runs.count(), "run")
        + (isCut ? " at full scale, of up to " : " at or above it, of up to ")
        + counted(runs.longestSamples(), "sample")
        + ", the first at "
        + Clock.of(runs.firstFrame() / recording.format().sampleRateHz())
        + (isCut ? "" : "; floating point keeps them, integers and converters will clip them");
  }

  private static String counted(long count, String word) {
    return count + " " + word + (count == 1 ? "" : "s");
  }
}
