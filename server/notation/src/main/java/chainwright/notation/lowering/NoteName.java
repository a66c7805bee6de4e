package chainwright.notation.lowering;

import chainwright.quantity.Frequency;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Notes by name, such as {@code E2} or {@code Bb1}, with A4 at 440 Hz and C4 as middle C. */
public final class NoteName {

  private static final Pattern NOTE = Pattern.compile("([A-Ga-g])([#b]?)(-?\\d)");
  private static final int[] SEMITONES_ABOVE_C = {9, 11, 0, 2, 4, 5, 7};
  private static final String[] NAMES = {
    "C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"
  };
  private static final double A4_HERTZ = 440;
  private static final int A4_NUMBER = 69;
  private static final int SEMITONES = 12;

  private NoteName() {}

  /**
   * Returns the frequency of a note in equal temperament.
   *
   * <p>Source: ISO 16:1975 (A4 = 440 Hz); f = 440 * 2^((n - 69) / 12), C4 being number 60.
   *
   * @param name such as "E2"
   * @return its frequency, or empty if that is no note's name
   */
  public static Optional<Frequency> frequency(String name) {
    Matcher matcher = NOTE.matcher(name);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    int letter = Character.toUpperCase(matcher.group(1).charAt(0)) - 'A';
    String accidental = matcher.group(2);
    int shift = accidental.isEmpty() ? 0 : accidental.equals("#") ? 1 : -1;
    int number =
        SEMITONES_ABOVE_C[letter] + shift + SEMITONES * (Integer.parseInt(matcher.group(3)) + 1);
    return Optional.of(
        Frequency.ofHertz(A4_HERTZ * Math.pow(2, (number - A4_NUMBER) / (double) SEMITONES)));
  }

  /**
   * Returns the name of the note nearest to a frequency, such as "E2".
   *
   * <p>Source: ISO 16:1975, as above.
   *
   * @param hertz the frequency [Hz], above 0
   * @return the note's name
   */
  public static String nearest(double hertz) {
    int number = (int) Math.round(A4_NUMBER + SEMITONES * Math.log(hertz / A4_HERTZ) / Math.log(2));
    return NAMES[Math.floorMod(number, SEMITONES)] + (Math.floorDiv(number, SEMITONES) - 1);
  }

  /** The flat of the same pitch for a sharp such as `F#3`; empty for anything else. */
  static Optional<String> flat(String sharp) {
    int letter =
        sharp.length() < 3 || sharp.charAt(1) != '#' ? -1 : "CDFGA".indexOf(sharp.charAt(0));
    return letter < 0
        ? Optional.empty()
        : Optional.of("DEGAB".charAt(letter) + "b" + sharp.substring(2))
            .filter(one -> frequency(one).isPresent());
  }
}
