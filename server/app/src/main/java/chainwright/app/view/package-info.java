/** What a person is shown of a chain: its stages as plots, and in words. */
@NullMarked
package chainwright.app.view;

import org.jspecify.annotations.NullMarked;
