package chainwright.app.assist;

import chainwright.notation.text.TextSpan;

/**
 * What is shown about a stretch of a text.
 *
 * @param markdown the text, in Markdown; its first line is the answer
 * @param span the stretch, from the section's start
 */
public record HoverText(String markdown, TextSpan span) {}
