/**
 * Says in words what the trade knows of a stage, a setting, a rule or a source, and what a chain
 * does.
 */
@NullMarked
package chainwright.app.explain;

import org.jspecify.annotations.NullMarked;
