/** Where the process begins. */
@NullMarked
package chainwright.app;

import org.jspecify.annotations.NullMarked;
