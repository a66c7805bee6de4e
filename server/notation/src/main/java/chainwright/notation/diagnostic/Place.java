package chainwright.notation.diagnostic;

import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextSpan;

/**
 * A stretch of one section of a file.
 *
 * <p>The span counts from the section's start, so that a place stays true while the text above it
 * is edited. Who shows it knows where the section stands.
 *
 * @param section the section
 * @param span the stretch, in offsets from the section's start
 */
public record Place(Section section, TextSpan span) {}
