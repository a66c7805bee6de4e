package chainwright.dsp.loudness;

import java.util.List;

/**
 * Everything that a recording measures.
 *
 * @param frameCount how long it is [samples of each channel]
 * @param rejectedCount how many samples were no audio, over all channels: NaN, infinite, or more
 *     than 200 dB above full scale; they were measured as silence
 * @param loudness how loud it is
 * @param truePeaks how high each channel rises between its samples
 * @param levels the levels of each channel
 * @param correlation how alike the first two channels are, from −1 to 1; NaN if there is one
 *     channel, or one of them is silent
 */
public record SignalReading(
    long frameCount,
    long rejectedCount,
    LoudnessReading loudness,
    List<TruePeakReading> truePeaks,
    List<ChannelLevels> levels,
    double correlation) {

  /**
   * Checks and copies the values.
   *
   * @param frameCount how long it is
   * @param rejectedCount how many samples were no audio
   * @param loudness how loud it is
   * @param truePeaks how high each channel rises
   * @param levels the levels of each channel
   * @param correlation how alike the first two channels are
   */
  public SignalReading {
    truePeaks = List.copyOf(truePeaks);
    levels = List.copyOf(levels);
  }

  /**
   * Returns the highest true peak of all channels, by the standard's reading.
   *
   * @return the peak [dBTP]; negative infinity for silence
   */
  public double annex2Dbtp() {
    return truePeaks.stream().mapToDouble(TruePeakReading::annex2Dbtp).max().orElseThrow();
  }

  /**
   * Returns the highest true peak of all channels, by the finer reading.
   *
   * @return the peak [dBTP]; negative infinity for silence
   */
  public double fineDbtp() {
    return truePeaks.stream().mapToDouble(TruePeakReading::fineDbtp).max().orElseThrow();
  }

  /**
   * Returns the highest sample of all channels.
   *
   * @return the peak [dBFS]; negative infinity for silence
   */
  public double samplePeakDbfs() {
    return levels.stream().mapToDouble(ChannelLevels::samplePeakDbfs).max().orElseThrow();
  }
}
