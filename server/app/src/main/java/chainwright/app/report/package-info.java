/** What is told of recordings: what they measure, and what to be careful of. */
@NullMarked
package chainwright.app.report;

import org.jspecify.annotations.NullMarked;
