package chainwright.notation.model;

import chainwright.notation.text.TextSpan;

/**
 * A name where it is defined or used.
 *
 * @param text the name, such as "rumble-guard"
 * @param span where it stands
 */
public record Name(String text, TextSpan span) {}
