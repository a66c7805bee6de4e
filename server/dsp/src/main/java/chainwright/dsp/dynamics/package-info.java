/**
 * What level does to gain: static curves, level detectors, attack and release, and the processors
 * made of them.
 *
 * <p>Levels are in dB relative to full scale (amplitude 1.0 is 0 dB; RMS levels are
 * sine-referenced, so a sine reads its peak either way). Gain reduction is positive dB. Attack and
 * release are the time constants of the smoothing of the gain in dB: the time to 1 − 1/e, or 63 %,
 * of a step. A design ({@link chainwright.dsp.dynamics.CompressorDesign}) is an immutable value
 * that may be shared; a run ({@link chainwright.dsp.dynamics.Compressor}) holds the state of one
 * channel and belongs to one thread. No argument and no result is null.
 */
@NullMarked
package chainwright.dsp.dynamics;

import org.jspecify.annotations.NullMarked;
