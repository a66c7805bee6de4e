/** The way of a signal through a chain and the buses after it, presets put in their places. */
@NullMarked
package chainwright.engine.path;

import org.jspecify.annotations.NullMarked;
