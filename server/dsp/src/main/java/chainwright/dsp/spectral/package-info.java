/**
 * Signals by their short-time spectra: Fourier transforms, frames that overlap, and what is done to
 * a frame.
 */
@NullMarked
package chainwright.dsp.spectral;

import org.jspecify.annotations.NullMarked;
