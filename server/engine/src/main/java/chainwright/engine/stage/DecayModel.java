package chainwright.engine.stage;

/** How what a stage adds goes on after the sound. */
public sealed interface DecayModel permits RoomDecay, RepeatsDecay {

  /**
   * Returns how long a sound of this frequency takes to fall by 60 dB.
   *
   * @param hertz the frequency [Hz], ≥ 0
   * @return the time [s], ≥ 0
   */
  double secondsAt(double hertz);

  /**
   * Returns how much of the sound is what the stage adds.
   *
   * @return the factor of what it adds, 0 to 1; the rest to 1 is that of the sound as it came in
   */
  double blendShare();
}
