/**
 * Repairs of recordings: steady noise, clicks, plosives. All are processors whose latency is exact;
 * what is no number, or so large that its square is none, goes round them, as {@link
 * chainwright.dsp.repair.StrayDetourDesign} says.
 */
@NullMarked
package chainwright.dsp.repair;

import org.jspecify.annotations.NullMarked;
