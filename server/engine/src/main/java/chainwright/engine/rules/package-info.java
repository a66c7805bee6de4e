/**
 * The rules of the trade: each looks at a chain and says what is risky, why, and what to do.
 *
 * <p>A rule is one class, one folder of the same name with its page and examples, and nothing else.
 * It never reads tokens: it asks {@link chainwright.engine.rules.Evidence}.
 */
@NullMarked
package chainwright.engine.rules;

import org.jspecify.annotations.NullMarked;
