package chainwright.notation.model;

import chainwright.notation.text.TextSpan;

/**
 * The author's word that a rule is broken on purpose.
 *
 * @param rule the rule's code
 * @param reason why; empty text where it is missing, which is a finding
 * @param span the whole clause
 */
public record Deliberate(Name rule, String reason, TextSpan span) {}
