package chainwright.dsp.repair;

/**
 * The value that so many of some values lie below, without sorting them all and without garbage.
 *
 * <p>Source: C. A. R. Hoare, "Algorithm 65: Find", Communications of the ACM 4(7), 1961; from
 * memory.
 */
final class OrderStatistic {

  private OrderStatistic() {}

  /**
   * Finds the value that would stand at a place if the values were sorted; reorders them.
   *
   * @param values the values, none of them NaN
   * @param count how many from the first on
   * @param place the place, from 0 to below the count
   * @return the value
   */
  static double at(double[] values, int count, int place) {
    int left = 0;
    int right = count - 1;
    while (left < right) {
      double pivot = values[place];
      int low = left;
      int high = right;
      while (low <= high) {
        while (values[low] < pivot) {
          low++;
        }
        while (values[high] > pivot) {
          high--;
        }
        if (low <= high) {
          double swapped = values[low];
          values[low++] = values[high];
          values[high--] = swapped;
        }
      }
      if (high < place) {
        left = low;
      }
      if (low > place) {
        right = high;
      }
    }
    return values[place];
  }
}
