package chainwright.dsp.filter;

/** Neighbouring sections of a cascade, at work on the channels of one signal. */
interface SectionGroup {

  /** Far below the rounding of any signal, far above the subnormal numbers. */
  double AT_REST = 1e-200;

  /** Filters a block in place; each channel gets the same bits whatever stands beside it. */
  void process(double[][] channels, int from, int to);

  /** Brings each section to rest whose state has no audible meaning any more. */
  void settle();

  /** Returns to silence. */
  void reset();

  /** Brings to rest the sections whose states, two numbers each, stand in these rows. */
  static void settle(double[][] states) {
    for (double[] state : states) {
      for (int s = 0; s < state.length; s += 2) {
        if (Math.abs(state[s]) < AT_REST && Math.abs(state[s + 1]) < AT_REST) {
          state[s] = 0;
          state[s + 1] = 0;
        }
      }
    }
  }
}
