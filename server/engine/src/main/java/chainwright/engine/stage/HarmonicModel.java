package chainwright.engine.stage;

import chainwright.dsp.nonlinear.Harmonics;

/** What harmonics a stage adds to a sine. */
@FunctionalInterface
public interface HarmonicModel {

  /**
   * Returns the harmonics of a sine.
   *
   * @param hertz its frequency [Hz]; a memoryless stage does not depend on it
   * @param levelDbfs its level [dBFS]
   * @param count the highest harmonic, 1 or more
   * @return the harmonics
   */
  Harmonics harmonics(double hertz, double levelDbfs, int count);
}
