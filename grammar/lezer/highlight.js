import { styleTags, tags } from '@lezer/highlight';

export const highlighting = styleTags({
  Head: tags.keyword,
  Setting: tags.propertyName,
  Name: tags.labelName,
  Number: tags.number,
  // Where a theme has no colour of its own for it, that of its number.
  'Unit UnitSign': tags.special(tags.number),
  Text: tags.string,
  'NoteText Prose': tags.docComment,
  Comment: tags.lineComment,
  '{ }': tags.brace,
  'Equals To': tags.operator,
  Continuation: tags.punctuation,
});
