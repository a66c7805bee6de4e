/**
 * Several files together: what a name means across imports, and which names mean nothing.
 *
 * <p>Files are known by keys, which are paths with forward slashes; nothing here reads a file.
 */
@NullMarked
package chainwright.notation.project;

import org.jspecify.annotations.NullMarked;
