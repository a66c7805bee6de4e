// What is compared: for each line of a file a string with one letter a character, `.` where nothing is said.

/** The letters, and what they stand for: the classes that the server gives to tokens. */
export const classes = {
  S: 'stage word',
  s: 'setting',
  N: 'name',
  n: 'number',
  u: 'unit',
  t: 'text',
  o: 'note',
  c: 'comment',
  p: 'punctuation',
  '.': 'nothing',
};

const blank = /[\t\v\f\p{Zs}\u200b\ufeff]/u;

/** The lines of a text. An editor takes line ends away before a grammar sees a line. */
export function linesOf(text) {
  return text.split(/\r\n|\r|\n/);
}

/** Letters for one line from spans in UTF-16 units; a later span covers an earlier one. */
export function lettersOf(line, spans) {
  const units = Array.from({ length: line.length }, () => '.');
  for (const { from, to, letter } of spans) {
    units.fill(letter, from, to);
  }
  let letters = '';
  let at = 0;
  for (const character of line) {
    letters += units[at];
    at += character.length;
  }
  return letters;
}

/** Where two readings of one line part, as `{ from, to, ours, theirs }` in characters; what is blank has no class. */
export function differences(line, ours, theirs) {
  const characters = Array.from(line);
  const found = [];
  for (let at = 0; at < characters.length; at++) {
    if (ours[at] === theirs[at] || blank.test(characters[at])) {
      continue;
    }
    const last = found.at(-1);
    if (last && last.to === at && last.ours === ours[at] && last.theirs === theirs[at]) {
      last.to++;
    } else {
      found.push({ from: at, to: at + 1, ours: ours[at], theirs: theirs[at] });
    }
  }
  return found;
}
