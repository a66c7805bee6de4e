package chainwright.dsp.signal;

/**
 * Uniform noise that is the same for the same seed.
 *
 * <p>Source: G. L. Steele, D. Lea, C. H. Flood, "Fast Splittable Pseudorandom Number Generators",
 * OOPSLA 2014, figure 14 (SplitMix64), with the constants of the variant named there; from memory.
 */
final class NoiseSource {

  private static final long STEP = 0x9e3779b97f4a7c15L;

  private long state;

  /** Starts one of several noises of a seed; they have nothing in common. */
  NoiseSource(long seed, int number) {
    this.state = mix(seed + mix(STEP * (number + 1L)));
  }

  /** Returns the next number, -0.5 (closed) to 0.5 (open). */
  double next() {
    state += STEP;
    return (mix(state) >>> 11) * 0x1p-53 - 0.5;
  }

  private static long mix(long value) {
    long z = (value ^ value >>> 30) * 0xbf58476d1ce4e5b9L;
    z = (z ^ z >>> 27) * 0x94d049bb133111ebL;
    return z ^ z >>> 31;
  }
}
