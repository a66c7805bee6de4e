package chainwright.app.demo;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * The takes of the invented session, each with the faults that its chain mends.
 *
 * <p>Voice and guitar are recorded in one pass, so that each is in the other's microphone. The
 * voice has sharp esses, rumble and hum below it and a hard edge of the room; the guitar a boom at
 * 190 Hz, the piano one at 240 Hz.
 */
public final class DemoTakes {

  /** The sample rate of all takes [Hz]. */
  public static final int SAMPLE_RATE_HZ = 48_000;

  private static final double MAINS_HZ = 50;
  private static final int FRAMES = (int) (Song.SECONDS * SAMPLE_RATE_HZ);

  /** How much earlier the voice is in the guitar's microphone than in its own. */
  private static final int VOICE_EARLIER_FRAMES = (int) (0.0006 * SAMPLE_RATE_HZ);

  private static final int GUITAR_LATER_FRAMES = (int) (0.0025 * SAMPLE_RATE_HZ);

  private DemoTakes() {}

  /**
   * Plays and sings all of them.
   *
   * @return the takes by the names of their chains, [channel][frame], full scale 1.0
   */
  public static Map<String, double[][]> render() {
    double[] voice = voice();
    double[] guitar = guitar();
    Map<String, double[][]> takes = new LinkedHashMap<>();
    takes.put("lead", new double[][] {lead(voice, guitar)});
    takes.put("guitar", new double[][] {withVoice(guitar, voice)});
    takes.put("backing-left", new double[][] {backing(1, 0.012, 21)});
    takes.put("backing-right", new double[][] {backing(2, -0.009, 22)});
    takes.put("piano", piano());
    takes.put("double-bass", new double[][] {doubleBass()});
    takes.put("frame-drum", new double[][] {frameDrum()});
    return takes;
  }

  private static double[] voice() {
    double[] voice = new SungVoice(SAMPLE_RATE_HZ, Song.lead(), 11).render(FRAMES);
    Band.add(voice, SAMPLE_RATE_HZ, 3200, 2, 0.6);
    return toPeak(voice, -6);
  }

  private static double[] lead(double[] voice, double[] guitar) {
    double[] lead = voice.clone();
    addLater(lead, guitar, GUITAR_LATER_FRAMES, -14);
    SplittableRandom random = new SplittableRandom(12);
    Resonator rumble = Resonator.of(SAMPLE_RATE_HZ, 18, 25);
    for (int i = 0; i < FRAMES; i++) {
      double turn = 2 * Math.PI * MAINS_HZ * i / SAMPLE_RATE_HZ;
      lead[i] += 0.006 * Math.sin(turn) + 0.003 * Math.sin(2 * turn) + 0.002 * Math.sin(3 * turn);
      lead[i] += 0.25 * rumble.process(random.nextDouble() - 0.5);
      lead[i] += 0.0002 * (random.nextDouble() - 0.5);
    }
    return lead;
  }

  private static double[] guitar() {
    double[] guitar = new double[FRAMES];
    for (int bar = 0; bar < Song.BARS; bar++) {
      int seed = 100 * bar;
      for (int eighth = 0; eighth < 8; eighth++) {
        boolean isLastBar = bar == Song.BARS - 1;
        if (!isLastBar || eighth < 5) {
          int string = new int[] {0, 2, 3, 4, 1, 3, 2, 4}[eighth];
          PluckedString.add(
              guitar,
              SAMPLE_RATE_HZ,
              Song.seconds(bar, eighth / 2.0),
              Song.hertz(Song.chord(bar).get(string)),
              string == 0 ? 4 : 2.5,
              0.55,
              0.3,
              seed + eighth);
        }
      }
    }
    Band.add(guitar, SAMPLE_RATE_HZ, 190, 1.6, 0.8);
    return toPeak(guitar, -9);
  }

  private static double[] withVoice(double[] guitar, double[] voice) {
    double[] take = guitar.clone();
    addLater(take, voice, -VOICE_EARLIER_FRAMES, -12);
    return take;
  }

  private static double[] backing(int below, double lateSeconds, long seed) {
    double[] voice =
        new SungVoice(SAMPLE_RATE_HZ, Song.backing(below, lateSeconds), seed).render(FRAMES);
    Band.add(voice, SAMPLE_RATE_HZ, 260, 1.2, 0.25);
    return toPeak(voice, -9);
  }

  private static double[][] piano() {
    double[][] piano = new double[2][FRAMES];
    for (int bar = 0; bar < Song.BARS; bar++) {
      for (int k = 1; k < Song.chord(bar).size(); k++) {
        double seconds = Song.seconds(bar, k == 1 ? 0 : 1 + k % 3);
        double hertz = Song.hertz(Song.chord(bar).get(k) + (k == 1 ? 0 : 12));
        StruckString.add(piano[0], piano[1], SAMPLE_RATE_HZ, seconds, hertz, 0.2);
      }
    }
    for (double[] side : piano) {
      Band.add(side, SAMPLE_RATE_HZ, 240, 1.4, 0.6);
    }
    double peak = Math.max(peak(piano[0]), peak(piano[1]));
    for (double[] side : piano) {
      scale(side, Math.pow(10, -10 / 20.0) / peak);
    }
    return piano;
  }

  private static double[] doubleBass() {
    double[] bass = new double[FRAMES];
    for (int bar = 0; bar < Song.BARS; bar++) {
      for (int half = 0; half < 2; half++) {
        int octaveDown = Song.chord(bar).get(0) - (Song.chord(bar).get(0) > -9 ? 12 : 0);
        PluckedString.add(
            bass,
            SAMPLE_RATE_HZ,
            Song.seconds(bar, 2 * half),
            Song.hertz(octaveDown + (half == 1 && bar < Song.BARS - 1 ? 7 : 0)),
            3,
            0.92,
            0.6,
            500 + 10 * bar + half);
      }
    }
    return toPeak(bass, -8);
  }

  private static double[] frameDrum() {
    double[] drum = new double[FRAMES];
    for (int bar = 0; bar < Song.BARS; bar++) {
      for (int beat = 0; beat < 4; beat++) {
        double gain = beat == 0 ? 0.5 : beat == 2 ? 0.4 : 0.16;
        FrameDrum.add(
            drum, SAMPLE_RATE_HZ, Song.seconds(bar, beat), 92, gain, 900 + 4 * bar + beat);
      }
    }
    return toPeak(drum, -10);
  }

  private static void addLater(double[] into, double[] sound, int laterFrames, double gainDb) {
    double factor = Math.pow(10, gainDb / 20);
    for (int i = 0; i < into.length; i++) {
      int at = i - laterFrames;
      into[i] += at >= 0 && at < sound.length ? factor * sound[at] : 0;
    }
  }

  private static double[] toPeak(double[] samples, double peakDbfs) {
    scale(samples, Math.pow(10, peakDbfs / 20) / peak(samples));
    return samples;
  }

  private static void scale(double[] samples, double factor) {
    for (int i = 0; i < samples.length; i++) {
      samples[i] *= factor;
    }
  }

  private static double peak(double[] samples) {
    double peak = 0;
    for (double sample : samples) {
      peak = Math.max(peak, Math.abs(sample));
    }
    return peak;
  }
}
