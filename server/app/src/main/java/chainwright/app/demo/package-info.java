/**
 * The recordings of the invented session, made from published models of voices and instruments.
 * Every sample comes of formulas and seeded noise: the same recording each time, and nobody's.
 */
@NullMarked
package chainwright.app.demo;

import org.jspecify.annotations.NullMarked;
