/**
 * What a recording measures: loudness, peaks, levels, and what makes two recordings equally loud.
 *
 * <p>Samples are [channel][sample] with full scale 1.0. Loudness is in LUFS, which BS.1770 calls
 * LKFS; peaks in dB relative to full scale (dBFS, dBTP); RMS levels are sine-referenced (AES17: a
 * full-scale sine has 0 dBFS, a full-scale square wave +3.01 dBFS). A reading of negative infinity
 * is silence; NaN means that there was too little to read it from.
 *
 * <p>Meters run over blocks of any size, and give the same result bit for bit whatever it is. Their
 * memory does not grow with the length of the recording, and they allocate nothing while they run.
 * A sample that is NaN, infinite or more than 200 dB above full scale is counted as rejected and
 * measured as silence; one below −3000 dBFS is silence. A meter belongs to one thread. No argument
 * and no result is null.
 */
@NullMarked
package chainwright.dsp.loudness;

import org.jspecify.annotations.NullMarked;
