package chainwright.app.demo;

/**
 * A vowel by the frequencies of its three lowest formants.
 *
 * <p>Source: G. E. Peterson and H. L. Barney, "Control methods used in a study of the vowels", JASA
 * 24(2), 1952, table II, the women's means (from memory).
 */
enum Vowel {
  /** As in "heed". */
  EE(310, 2790, 3310),
  /** As in "head". */
  EH(610, 2330, 2990),
  /** As in "hod". */
  AH(850, 1220, 2810),
  /** As in "hawed". */
  AW(590, 920, 2710),
  /** As in "who'd". */
  OO(370, 950, 2670);

  private final double firstHz;
  private final double secondHz;
  private final double thirdHz;

  Vowel(double firstHz, double secondHz, double thirdHz) {
    this.firstHz = firstHz;
    this.secondHz = secondHz;
    this.thirdHz = thirdHz;
  }

  /** Returns a formant [Hz], from 0 to 2. */
  double formantHz(int index) {
    return index == 0 ? firstHz : index == 1 ? secondHz : thirdHz;
  }
}
