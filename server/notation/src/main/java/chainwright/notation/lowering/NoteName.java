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
    "C", "Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B"
  };
  private static final double A4_HERTZ = 440;
  private static final int A4_NUMBER = 69;
  private static final int SEMITONES = 12;
  private static final int CENTS = 100;

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
   * Returns the name of the note nearest to a frequency, such as "E2"; a black key by its flat, as
   * the notation writes it.
   *
   * <p>Source: ISO 16:1975, as above.
   *
   * @param hertz the frequency [Hz], above 0
   * @return the note's name
   */
  public static String nearest(double hertz) {
    int number = (int) Math.round(number(hertz));
    return NAMES[Math.floorMod(number, SEMITONES)] + (Math.floorDiv(number, SEMITONES) - 1);
  }

  /**
   * Returns how far a frequency lies above the nearest note, such as 16 for 66 Hz, above C2.
   *
   * <p>Source: ISO 16:1975, as above; a cent is a hundredth of a semitone of equal temperament.
   *
   * @param hertz the frequency [Hz], above 0
   * @return the distance [cents], from -50 to 50
   */
  public static double centsAboveNearest(double hertz) {
    double number = number(hertz);
    return CENTS * (number - Math.round(number));
  }

  private static double number(double hertz) {
    return A4_NUMBER + SEMITONES * Math.log(hertz / A4_HERTZ) / Math.log(2);
  }

  /**
   * Returns the flat of the same pitch, which can be written where a sharp would begin a comment.
   *
   * @param sharp such as "F#3"
   * @return such as "Gb3"; empty for anything but a sharp
   */
  public static Optional<String> flat(String sharp) {
    int letter =
        sharp.length() < 3 || sharp.charAt(1) != '#' ? -1 : "CDFGA".indexOf(sharp.charAt(0));
    return letter < 0
        ? Optional.empty()
        : Optional.of("DEGAB".charAt(letter) + "b" + sharp.substring(2))
            .filter(one -> frequency(one).isPresent());
  }
}
