import { styleTags, tags } from '@lezer/highlight';

export const highlighting = styleTags({
  Head: tags.keyword,
  Setting: tags.propertyName,
  Name: tags.labelName,
  Number: tags.number,
  'Unit UnitSign': tags.unit,
  Text: tags.string,
  'NoteText Prose': tags.docComment,
  Comment: tags.lineComment,
  '{ }': tags.brace,
  'Equals To': tags.operator,
  Continuation: tags.punctuation,
});
