/** What is said about a text: findings, where they stand, and the edits that mend them. */
@NullMarked
package chainwright.notation.diagnostic;

import org.jspecify.annotations.NullMarked;
