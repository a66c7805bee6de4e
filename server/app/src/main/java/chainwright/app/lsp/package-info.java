/** The language server protocol. It only translates: one handler a request. */
@NullMarked
package chainwright.app.lsp;

import org.jspecify.annotations.NullMarked;
