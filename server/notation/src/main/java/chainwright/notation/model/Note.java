package chainwright.notation.model;

import chainwright.notation.text.TextSpan;

/**
 * A note of the author's.
 *
 * @param text its Markdown text
 * @param span where it stands
 */
public record Note(String text, TextSpan span) {}
