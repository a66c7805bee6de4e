/** The command line. Only it prints. */
@NullMarked
package chainwright.app.cli;

import org.jspecify.annotations.NullMarked;
