package chainwright.app.audiofile;

import java.util.List;

/**
 * What a file's samples are.
 *
 * @param file the kind of file
 * @param sampleRateHz the sample rate [Hz], {@value #LOWEST_RATE_HZ} to {@value #HIGHEST_RATE_HZ}
 * @param channels how many channels, 1 to {@value #MOST_CHANNELS}
 * @param speakers what each channel is for, in the order of the channels; empty if it is not said
 * @param samples how a sample is stored
 */
public record AudioFormat(
    FileKind file, double sampleRateHz, int channels, List<Speaker> speakers, SampleKind samples) {

  /** The lowest sample rate [Hz]. */
  public static final int LOWEST_RATE_HZ = 8_000;

  /** The highest sample rate [Hz]. */
  public static final int HIGHEST_RATE_HZ = 384_000;

  /** As many channels as one serial multichannel link of AES10 carries. */
  public static final int MOST_CHANNELS = 64;

  /**
   * Checks the values.
   *
   * @param file the kind of file
   * @param sampleRateHz the sample rate [Hz]
   * @param channels how many channels
   * @param speakers what each channel is for
   * @param samples how a sample is stored
   * @throws IllegalArgumentException if a value lies outside its range, or the speakers are neither
   *     none nor one a channel
   */
  public AudioFormat {
    if (!(sampleRateHz >= LOWEST_RATE_HZ && sampleRateHz <= HIGHEST_RATE_HZ)) {
      throw new IllegalArgumentException(
          "the sample rate must lie between 8 kHz and 384 kHz, but was " + sampleRateHz + " Hz");
    }
    if (channels < 1 || channels > MOST_CHANNELS) {
      throw new IllegalArgumentException("there must be 1 to 64 channels, but were " + channels);
    }
    speakers = List.copyOf(speakers);
    if (!speakers.isEmpty() && speakers.size() != channels) {
      throw new IllegalArgumentException(
          "there must be a speaker for each of " + channels + " channels, but were " + speakers);
    }
  }

  /**
   * Returns a format whose channels are for the usual speakers.
   *
   * @param file the kind of file
   * @param sampleRateHz the sample rate [Hz]
   * @param channels how many channels
   * @param samples how a sample is stored
   * @return the format
   */
  public static AudioFormat of(
      FileKind file, double sampleRateHz, int channels, SampleKind samples) {
    return new AudioFormat(file, sampleRateHz, channels, Speaker.usual(channels), samples);
  }
}
