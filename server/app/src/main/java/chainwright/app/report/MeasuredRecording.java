package chainwright.app.report;

import chainwright.app.audiofile.AudioFiles;
import chainwright.app.audiofile.AudioFormat;
import chainwright.app.audiofile.AudioReader;
import chainwright.dsp.loudness.ChannelPosition;
import chainwright.dsp.loudness.LevelMeter;
import chainwright.dsp.loudness.SignalMeter;
import chainwright.dsp.loudness.SignalReading;
import chainwright.quantity.SampleRate;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * A recording and what it measures.
 *
 * @param file the file, as it was named
 * @param format what its samples are
 * @param positions where each channel's loudspeaker stands
 * @param reading what it measures
 * @param warnings what was wrong with the file and how it was read all the same, a sentence each
 */
public record MeasuredRecording(
    Path file,
    AudioFormat format,
    List<ChannelPosition> positions,
    SignalReading reading,
    List<String> warnings) {

  private static final int BLOCK_FRAMES = 4096;

  /**
   * Copies the lists.
   *
   * @param file the file
   * @param format what its samples are
   * @param positions where each channel's loudspeaker stands
   * @param reading what it measures
   * @param warnings what was wrong with the file
   */
  public MeasuredRecording {
    positions = List.copyOf(positions);
    warnings = List.copyOf(warnings);
  }

  /**
   * Reads a recording from its start to its end, and measures it.
   *
   * @param file the file
   * @return what it measures
   * @throws IOException if it is no audio file that can be read; the message says what to do
   */
  public static MeasuredRecording measure(Path file) throws IOException {
    try (AudioReader reader = AudioFiles.open(file)) {
      AudioFormat format = reader.format();
      List<ChannelPosition> positions = ChannelPositions.of(format);
      SignalMeter meter =
          new SignalMeter(SampleRate.ofHertz(format.sampleRateHz()), positions, fullScale(format));
      double[][] block = new double[format.channels()][BLOCK_FRAMES];
      int read = reader.read(block, 0, BLOCK_FRAMES);
      while (read > 0) {
        meter.process(block, 0, read);
        read = reader.read(block, 0, BLOCK_FRAMES);
      }
      return new MeasuredRecording(file, format, positions, meter.measure(), reader.warnings());
    }
  }

  private static double fullScale(AudioFormat format) {
    return format.samples().isInteger() && format.samples().bits() > 1
        ? LevelMeter.fullScale(format.samples().bits())
        : LevelMeter.FLOATING_POINT_FULL_SCALE;
  }

  /**
   * Returns how long the recording is.
   *
   * @return the length [s]
   */
  public double seconds() {
    return reading.frameCount() / format.sampleRateHz();
  }

  /**
   * Returns what a channel is called.
   *
   * @param channel the channel, from 0
   * @return its number from 1 and its place, such as {@code 1 left}
   */
  public String channelName(int channel) {
    return channel + 1 + " " + ChannelPositions.word(positions.get(channel));
  }

  /**
   * Asks whether the file says what its channels are for.
   *
   * @return false if the places of the channels are those that are usual for their number
   */
  public boolean saysItsPositions() {
    return !format.speakers().isEmpty();
  }
}
