package chainwright.dsp.filter;

import chainwright.quantity.Decibels;
import chainwright.quantity.Frequency;
import chainwright.quantity.QualityFactor;
import java.util.ArrayList;
import java.util.List;

/** Prototypes that are made of several sections, for repair and for time. */
public final class CorrectiveFilters {

  private CorrectiveFilters() {}

  /**
   * Makes a hum removal: one notch on the mains frequency and on each of its harmonics.
   *
   * @param mains the mains frequency, such as 50 Hz, above 0
   * @param harmonics how many notches, the mains frequency included, 1 or more
   * @param width the width of every notch between its -3 dB points, above 0 Hz
   * @param below the frequency from which on there are no notches, such as half the sample rate
   * @return the prototype
   * @throws IllegalArgumentException if a frequency is 0 Hz or there is no notch
   */
  public static AnaloguePrototype humRemoval(
      Frequency mains, int harmonics, Frequency width, Frequency below) {
    requireHarmonics(harmonics);
    List<AnalogueSection> sections = new ArrayList<>();
    for (int k = 1; k <= harmonics && mains.hertz() * k < below.hertz(); k++) {
      Frequency centre = Frequency.ofHertz(mains.hertz() * k);
      sections.addAll(EqualiserPrototypes.notch(centre, quality(centre, width)).sections());
    }
    return new AnaloguePrototype(sections);
  }

  /**
   * Makes a hum removal of limited depth, which rings less.
   *
   * @param mains the mains frequency, such as 50 Hz, above 0
   * @param harmonics how many dips, the mains frequency included, 1 or more
   * @param width the width of every dip's poles, above 0 Hz
   * @param depth the gain at the centre of each, below 0 dB
   * @param below the frequency from which on there are no dips, such as half the sample rate
   * @return the prototype
   * @throws IllegalArgumentException if a frequency is 0 Hz or there is no dip
   */
  public static AnaloguePrototype humRemoval(
      Frequency mains, int harmonics, Frequency width, Decibels depth, Frequency below) {
    requireHarmonics(harmonics);
    List<AnalogueSection> sections = new ArrayList<>();
    for (int k = 1; k <= harmonics && mains.hertz() * k < below.hertz(); k++) {
      Frequency centre = Frequency.ofHertz(mains.hertz() * k);
      sections.addAll(EqualiserPrototypes.dip(centre, quality(centre, width), depth).sections());
    }
    return new AnaloguePrototype(sections);
  }

  /**
   * Makes an offset removal: a high-pass of first order, far below the music.
   *
   * @param cutoff the cutoff, such as 3 Hz, above 0
   * @return the prototype
   */
  public static AnaloguePrototype offsetRemoval(Frequency cutoff) {
    return PassPrototypes.highPass(PassFamily.BUTTERWORTH, 1, cutoff);
  }

  /**
   * Makes a prototype of the same prototype several times, such as the stages of an all-pass.
   *
   * @param stage what is repeated
   * @param stages how often, 1 or more
   * @return the prototype
   * @throws IllegalArgumentException if there is no stage
   */
  public static AnaloguePrototype repeat(AnaloguePrototype stage, int stages) {
    if (stages < 1) {
      throw new IllegalArgumentException("there must be at least one stage, but was " + stages);
    }
    List<AnalogueSection> sections = new ArrayList<>();
    for (int k = 0; k < stages; k++) {
      sections.addAll(stage.sections());
    }
    return new AnaloguePrototype(sections);
  }

  private static void requireHarmonics(int harmonics) {
    if (harmonics < 1) {
      throw new IllegalArgumentException("there must be at least one notch, but was " + harmonics);
    }
  }

  private static QualityFactor quality(Frequency centre, Frequency width) {
    return new QualityFactor(centre.hertz() / width.hertz());
  }
}
