package chainwright.dsp.loudness;

/**
 * How high one channel rises between its samples.
 *
 * @param annex2Dbtp the standard's reading, interpolated fourfold [dBTP]; negative infinity for
 *     silence
 * @param fineDbtp the reading with 32 places a sample [dBTP]; negative infinity for silence, NaN if
 *     it was not asked for
 */
public record TruePeakReading(double annex2Dbtp, double fineDbtp) {}
