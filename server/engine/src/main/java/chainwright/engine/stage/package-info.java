/** What each stage kind does to a signal: one class a kind, named like the kind. */
@NullMarked
package chainwright.engine.stage;

import org.jspecify.annotations.NullMarked;
