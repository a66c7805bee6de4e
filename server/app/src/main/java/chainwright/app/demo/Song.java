package chainwright.app.demo;

import java.util.ArrayList;
import java.util.List;

/** What is sung and played: five bars of our own invention, at 84 beats per minute. */
final class Song {

  static final double BEAT_SECONDS = 60 / 84.0;
  static final double START_SECONDS = 0.3;
  static final int BARS = 5;

  /** How long the song is, with what rings on at its end [s]. */
  static final double SECONDS = 15.6;

  private static final double BAR_BEATS = 4;

  /** The chords, as semitones from the C below middle C, the lowest for the bass. */
  private static final List<List<Integer>> CHORDS =
      List.of(
          List.of(-8, 4, 7, 11, 16),
          List.of(-12, 0, 7, 12, 16),
          List.of(-5, 2, 7, 11, 19),
          List.of(-10, 2, 9, 14, 18),
          List.of(-8, 4, 7, 11, 16));

  private Song() {}

  /** Returns when a beat is [s], both counted from 0. */
  static double seconds(int bar, double beat) {
    return START_SECONDS + (bar * BAR_BEATS + beat) * BEAT_SECONDS;
  }

  /** Returns a note [Hz], in semitones from the C below middle C. */
  static double hertz(int semitones) {
    return 440 * Math.pow(2, (semitones - 21) / 12.0);
  }

  static List<Integer> chord(int bar) {
    return CHORDS.get(bar);
  }

  /** What the lead sings: one word jumps out in the third bar, the last bar is nearly whispered. */
  static List<Syllable> lead() {
    List<Syllable> sung = new ArrayList<>();
    sing(sung, 0, 1, 0.9, 11, Vowel.AH, 0, 0.16);
    sing(sung, 0, 2, 0.7, 14, Vowel.EH, -1, 0);
    sing(sung, 0, 3, 0.9, 16, Vowel.AW, 0, 0.14);
    sing(sung, 1, 0.25, 0.9, 19, Vowel.EE, 0, 0.15);
    sing(sung, 1, 1.25, 1, 16, Vowel.AW, -1, 0);
    sing(sung, 1, 2.5, 1.1, 14, Vowel.EH, -2, 0.16);
    sing(sung, 2, 0.25, 0.6, 14, Vowel.OO, -1, 0.13);
    sing(sung, 2, 1, 1, 19, Vowel.AH, 5, 0);
    sing(sung, 2, 2.25, 1.4, 14, Vowel.AW, 0, 0.15);
    sing(sung, 3, 0.25, 0.9, 18, Vowel.EE, 0, 0.17);
    sing(sung, 3, 1.25, 0.9, 16, Vowel.EH, -1, 0);
    sing(sung, 3, 2.25, 1.5, 14, Vowel.AH, -1, 0.15);
    sing(sung, 4, 0.25, 0.8, 11, Vowel.AW, -7, 0.14);
    sing(sung, 4, 1.25, 0.8, 9, Vowel.EH, -8, 0.14);
    sing(sung, 4, 2.25, 1.6, 7, Vowel.OO, -8, 0);
    return sung;
  }

  private static void sing(
      List<Syllable> sung,
      int bar,
      double beat,
      double beats,
      int semitones,
      Vowel vowel,
      double gainDb,
      double sibilantSeconds) {
    sung.add(
        new Syllable(
            seconds(bar, beat),
            beats * BEAT_SECONDS,
            hertz(semitones),
            vowel,
            gainDb,
            sibilantSeconds));
  }

  /** The same words a little later or earlier, on a note of the chord below the lead's. */
  static List<Syllable> backing(int below, double lateSeconds) {
    List<Syllable> sung = new ArrayList<>();
    for (int bar = 1; bar < BARS - 1; bar++) {
      List<Integer> chord = CHORDS.get(bar);
      int note = chord.get(chord.size() - 1 - below);
      sing(sung, bar, 0.25, 1.4, note, Vowel.AH, 0, 0.14);
      sing(sung, bar, 2.25, 1.4, note, Vowel.OO, -1, 0.13);
    }
    return sung.stream()
        .map(
            one ->
                new Syllable(
                    one.startSeconds() + lateSeconds,
                    one.seconds(),
                    one.noteHz(),
                    one.vowel(),
                    one.gainDb(),
                    one.sibilantSeconds()))
        .toList();
  }
}
