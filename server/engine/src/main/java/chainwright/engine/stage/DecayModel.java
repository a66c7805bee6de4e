package chainwright.engine.stage;

/** How long what a stage adds goes on after the sound. */
@FunctionalInterface
public interface DecayModel {

  /**
   * Returns how long a sound of this frequency takes to fall by 60 dB.
   *
   * @param hertz the frequency [Hz], ≥ 0
   * @return the time [s], ≥ 0
   */
  double secondsAt(double hertz);
}
