package chainwright.notation.diagnostic;

import chainwright.notation.syntax.Section;
import chainwright.notation.text.TextEdit;

/**
 * An edit inside one section of a file.
 *
 * @param section the section
 * @param edit the edit, in offsets from the section's start
 */
public record PlacedEdit(Section section, TextEdit edit) {}
