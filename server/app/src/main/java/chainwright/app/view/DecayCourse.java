package chainwright.app.view;

import chainwright.app.plot.DecayPlot;
import chainwright.app.plot.Samples;
import chainwright.dsp.reverb.EnergyBand;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.stage.RepeatsDecay;
import chainwright.engine.stage.RoomDecay;
import chainwright.quantity.Frequency;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How the level falls once the sound has stopped, in octaves low, middle and high.
 *
 * <p>Of a room it is the decay curve: the energy still to come after a click as a share of all,
 * which is the level of a steady sound after its end. Of an echo it is the level of each repeat
 * beside that of the sound as it came in.
 *
 * @param bands the octaves, the middle ones first
 * @param seconds the times after the end of the sound [s], rising
 * @param levelsDb the level in each band at those times [dB]; may be negative infinity
 */
public record DecayCourse(List<Band> bands, Samples seconds, List<Samples> levelsDb) {

  /**
   * Octaves that are taken together.
   *
   * @param firstHz the centre of the lowest [Hz]
   * @param lastHz the centre of the highest [Hz]
   */
  public record Band(double firstHz, double lastHz) {

    /** The octaves that the decay of a reverb is set for, and that the trade calls the middle. */
    public static final Band MIDDLE = new Band(500, 1000);

    /** Where the bass ratio holds. */
    public static final Band LOW = new Band(125, 125);

    /** Where the treble ratio holds. */
    public static final Band HIGH = new Band(4000, 4000);

    /** Returns the name, such as "500 Hz to 1 kHz". */
    String inWords() {
      String first = Frequency.ofHertz(firstHz).toString();
      return firstHz == lastHz ? first : first + " to " + Frequency.ofHertz(lastHz);
    }

    private EnergyBand below(double nyquistHz) {
      return EnergyBand.ofOctaves(firstHz, lastHz).below(nyquistHz);
    }
  }

  /**
   * Copies the lists.
   *
   * @param bands the octaves
   * @param seconds the times [s]
   * @param levelsDb the levels [dB]
   */
  public DecayCourse {
    bands = List.copyOf(bands);
    levelsDb = List.copyOf(levelsDb);
  }

  /**
   * Returns the decay curve of a room at some times.
   *
   * @param stage the stage
   * @param room what it adds
   * @param endSeconds the last time [s], above 0
   * @param count the number of times, the first 0 s, ≥ 2
   * @return the course
   */
  public static DecayCourse ofRoom(
      StageElement stage, RoomDecay room, double endSeconds, int count) {
    List<Band> bands = bands(stage);
    double[][] left =
        room.room().energyLeft(energyBands(bands, stage), endSeconds / (count - 1), count);
    double wet = room.blendShare() * room.blendShare();
    double dry = (1 - room.blendShare()) * (1 - room.blendShare());
    List<Samples> levels = new ArrayList<>();
    for (double[] energies : left) {
      double whole = dry + wet * energies[0];
      double[] decibels = new double[count];
      for (int i = 1; i < count; i++) {
        decibels[i] = decibels(wet * energies[i] / whole);
      }
      levels.add(Samples.of(decibels));
    }
    return new DecayCourse(bands, Samples.ofEvenlySpaced(0, endSeconds, count), levels);
  }

  /**
   * Returns how long a room is followed: until it has fallen by 60 dB, and a little more.
   *
   * @param stage the stage
   * @param room what it adds
   * @return the time [s]
   */
  public static double endSeconds(StageElement stage, RoomDecay room) {
    double longest =
        bands(stage).stream()
            .mapToDouble(band -> room.secondsAt(Math.sqrt(band.firstHz() * band.lastHz())))
            .max()
            .orElseThrow();
    return room.room().preDelayFrames() / room.room().sampleRateHz() + 1.25 * longest;
  }

  /**
   * Returns the level of each repeat of an echo, until none has more than −60 dB; first that of the
   * sound itself where it passes.
   *
   * @param stage the stage
   * @param repeats what it adds
   * @return the course, one time a sound
   */
  public static DecayCourse ofRepeats(StageElement stage, RepeatsDecay repeats) {
    List<Band> bands = bands(stage);
    double wet = repeats.blendShare() * repeats.blendShare();
    double dry = (1 - repeats.blendShare()) * (1 - repeats.blendShare());
    double least = Math.pow(10, DecayPlot.FALL_DB / 10);
    double[][] energies =
        wet < least
            ? new double[0][]
            : repeats.echo().repeatEnergies(energyBands(bands, stage), least / wet * (1 - 1e-9));
    double apart = repeats.echo().delayFrames() / repeats.echo().rate().hertz();
    int first = dry > 0 ? 0 : 1;
    double[] seconds = new double[energies.length + 1 - first];
    double[][] levels = new double[bands.size()][seconds.length];
    for (int i = 0; i < seconds.length; i++) {
      int repeat = i + first;
      seconds[i] = repeat * apart;
      for (int b = 0; b < levels.length; b++) {
        levels[b][i] = decibels(repeat == 0 ? dry : wet * energies[repeat - 1][b]);
      }
    }
    return new DecayCourse(
        bands, Samples.of(seconds), Arrays.stream(levels).map(Samples::of).toList());
  }

  private static List<Band> bands(StageElement stage) {
    double nyquistHz = stage.context().rate().nyquist().hertz();
    return List.of(Band.MIDDLE, Band.LOW, Band.HIGH).stream()
        .filter(band -> band.lastHz() < nyquistHz)
        .toList();
  }

  private static List<EnergyBand> energyBands(List<Band> bands, StageElement stage) {
    double nyquistHz = stage.context().rate().nyquist().hertz();
    return bands.stream().map(band -> band.below(nyquistHz)).toList();
  }

  private static double decibels(double energy) {
    return 10 * Math.log10(Math.max(0, energy));
  }

  /** Returns whether a course in two bands would be drawn as one line. */
  boolean isAlike(int band, int other, double withinDb) {
    for (int i = 0; i < seconds.size(); i++) {
      double one = Math.max(DecayPlot.FALL_DB, levelsDb.get(band).get(i));
      double two = Math.max(DecayPlot.FALL_DB, levelsDb.get(other).get(i));
      if (Math.abs(one - two) > withinDb) {
        return false;
      }
    }
    return true;
  }
}
