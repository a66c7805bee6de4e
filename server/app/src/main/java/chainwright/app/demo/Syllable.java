package chainwright.app.demo;

/**
 * A sung syllable.
 *
 * @param startSeconds where its vowel begins [s]
 * @param seconds how long the vowel lasts [s]
 * @param noteHz its note [Hz]
 * @param vowel its vowel
 * @param gainDb how loud it is against the others [dB]
 * @param sibilantSeconds how long an "s" sounds before the vowel [s]; 0 for none
 */
record Syllable(
    double startSeconds,
    double seconds,
    double noteHz,
    Vowel vowel,
    double gainDb,
    double sibilantSeconds) {}
