package chainwright.dsp.spectral;

/** What is done to the spectra of one frame after the other. */
public interface SpectrumStage {

  /**
   * Changes the spectra of a frame in place.
   *
   * @param re the real parts, [channel][bin]
   * @param im the imaginary parts
   * @param isWhole whether the signal fills the frame: no quarter of it is digital silence
   */
  void process(double[][] re, double[][] im, boolean isWhole);

  /** Returns to the initial state. */
  void reset();
}
