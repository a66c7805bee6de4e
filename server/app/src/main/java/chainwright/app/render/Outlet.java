package chainwright.app.render;

/** What a work hands on of each block: sound and when it is meant for. */
interface Outlet {

  /** The samples, [channel][frame]. */
  double[][] sound(long block);

  /** How many frames of them there are, from index 0. */
  int count(long block);

  /** What time the first is meant for [frames]; below 0 for what is only on the way. */
  long startFrame(long block);
}
