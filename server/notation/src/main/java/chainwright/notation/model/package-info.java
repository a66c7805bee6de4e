/**
 * What a text says: sessions, presets, chains, buses and their stages, with the span of each part.
 *
 * <p>The model is lowered from the tree section by section. A part that could not be understood is
 * left out and a finding says so; everything else of the section is there. All spans count from the
 * start of the section that holds them. Nothing here knows what a stage does to a signal.
 */
@NullMarked
package chainwright.notation.model;

import org.jspecify.annotations.NullMarked;
