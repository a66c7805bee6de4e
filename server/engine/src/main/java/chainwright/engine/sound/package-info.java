/** The way of a signal made to sound: processors for a path, latencies made up for. */
@NullMarked
package chainwright.engine.sound;

import org.jspecify.annotations.NullMarked;
