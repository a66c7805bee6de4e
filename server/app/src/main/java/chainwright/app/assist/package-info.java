/** What an editor is told about a place in a text, in the editor's words: offsets and labels. */
@NullMarked
package chainwright.app.assist;

import org.jspecify.annotations.NullMarked;
