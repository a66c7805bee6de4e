// Reads a chain by the three layers of chain.ebnf, each by its own rules, and says at which one a text fails.
import { below, matcher, within } from './match.mjs';

const numbers = new Set(['number', 'colon number', 'fraction']);

/** Single characters by the words of their special sequences. */
const characters = {
  'CR LF': (signs, at) => (signs[at] === '\r' && signs[at + 1] === '\n' ? at + 2 : undefined),
  'any character but CR and LF': oneOf(/[^\r\n]/u),
  'any character of the Unicode category Zs': oneOf(/\p{Zs}/u),
  'any character of the Unicode categories L': oneOf(/\p{L}/u),
  ...Object.fromEntries(
    Object.entries({
      LF: '\n',
      CR: '\r',
      SPACE: ' ',
      'CHARACTER TABULATION': '\t',
      'LINE TABULATION': '\v',
      'FORM FEED': '\f',
      'U+2026 HORIZONTAL ELLIPSIS': '\u2026',
      'U+2212 MINUS SIGN': '\u2212',
      'U+2013 EN DASH': '\u2013',
      'U+00B0 DEGREE SIGN': '\u00b0',
      'U+201C LEFT DOUBLE QUOTATION MARK': '\u201c',
      'U+201D RIGHT DOUBLE QUOTATION MARK': '\u201d',
      'U+200B ZERO WIDTH SPACE': '\u200b',
      'U+FEFF': '\ufeff',
    }).map(([words, sign]) => [words, (signs, at) => (signs[at] === sign ? at + 1 : undefined)]),
  ),
};

function oneOf(pattern) {
  return (signs, at) => (at < signs.length && pattern.test(signs[at]) ? at + 1 : undefined);
}

/**
 * The marks of a text, each `{ kind, text, from, to }`: kind is the rule that made it or the sign itself, from and to count
 * characters of the whole text. Undefined where the lexical layer does not read the text.
 */
function marksOf(rules, text) {
  const signs = Array.from(text);
  const reader = matcher(rules, signs, {
    terminal: (wanted, _, at) => (signs.slice(at, at + wanted.length).join('') === wanted ? at + wanted.length : undefined),
    specials: characters,
    isGreedy: true,
  });
  const whole = reader.match('text');
  return whole && below(whole).flatMap(part => (part.name === 'line' ? below(part) : [part])).map(part => markOf(part, signs));
}

function markOf(part, signs) {
  const { name, from, to } = part;
  const text = signs.slice(from, to).join('');
  return { kind: name === 'mark' ? (below(part)[0]?.name ?? text) : name, text, from, to };
}

/** The marks that the syntactic layer sees: without blanks and comments, and without a line end that a continuation takes back. */
function parted(marks) {
  const signs = [];
  let canGoOn = false;
  for (const line of linesOf(marks)) {
    const own = line.filter(({ kind }) => !['blank', 'comment', 'byte order mark'].includes(kind));
    const isOwn = own.some(({ kind }) => kind !== 'line end');
    if (canGoOn && own[0]?.kind === 'continuation') {
      signs.pop();
      signs.push(...own.slice(1).map((sign, index) => (index === 0 ? { ...sign, isGoingOn: true } : sign)));
    } else if (isOwn) {
      signs.push(...own);
    }
    canGoOn = isOwn && !['{', '}'].includes(signs.at(-2)?.kind);
  }
  return signs;
}

function linesOf(marks) {
  const lines = [[]];
  for (const mark of marks) {
    lines.at(-1).push(mark);
    if (mark.kind === 'line end') {
      lines.push([]);
    }
  }
  return lines;
}

/** What the two upper layers share: their special sequences, and the marks as their terminals. */
function overMarks(rules) {
  const spellings = new Set(rules.get('unit spelling').body.of.map(({ text }) => text));
  const word = pattern => (signs, at) => (signs[at]?.kind === 'word' && pattern.test(signs[at].text) ? at + 1 : undefined);
  return {
    terminal: (text, signs, at) => (signs[at]?.text === text && signs[at].kind !== 'string' ? at + 1 : undefined),
    leaf: (name, sign) => (rules.get(name).layer === 'Lexical layer' ? sign?.kind === name : undefined),
    specials: {
      'before "}"': (signs, at) => (signs[at]?.kind === '}' ? at : undefined),
      'end of text': (signs, at) => (at === signs.length ? at : undefined),
      'no number that touches the next': (signs, at) =>
        numbers.has(signs[at - 1]?.kind) && signs[at - 1].to === signs[at]?.from ? undefined : at,
      'a word that touches the number, or that spells a unit': (signs, at) => {
        const sign = signs[at];
        if (sign?.kind !== 'word' || sign.isGoingOn || !numbers.has(signs[at - 1]?.kind)) {
          return undefined;
        }
        return signs[at - 1].to === sign.from || spellings.has(sign.text.toLowerCase()) ? at + 1 : undefined;
      },
      'an empty string': (signs, at) => (signs[at]?.kind === 'string' && /^.\s*.$/u.test(signs[at].text) ? at + 1 : undefined),
      'a word of lower-case letters and digits in groups parted by "-"': word(/^[\p{Ll}\p{Nd}]+(-[\p{Ll}\p{Nd}]+)*$/u),
      'a letter from A to G, "b" for a flat or nothing, and the octave: Bb2': word(/^[A-G]b?\d$/),
    },
  };
}

/** Notes and line ends taken away, and a sign put where a statement ends. */
function stated(signs, file) {
  const ends = new Set(within(file, ['end of statement']).map(({ from }) => from));
  const kept = signs.flatMap((sign, index) => [
    ...(ends.has(index) ? [{ kind: 'end of statement' }] : []),
    ...(['line end', 'prose'].includes(sign.kind) ? [] : [sign]),
  ]);
  return ends.has(signs.length) ? [...kept, { kind: 'end of statement' }] : kept;
}

/**
 * Reads a text. `{ failed }` names the layer that does not read it, undefined where all three do; then `letters` has
 * the class of each character of the text, as in ../classes.mjs.
 */
export function readChain(rules, text) {
  const marks = marksOf(rules, text);
  if (!marks) {
    return { failed: 'Lexical layer' };
  }
  const signs = parted(marks);
  const shared = overMarks(rules);
  const file = matcher(rules, signs, shared).match('file');
  if (!file) {
    return { failed: 'Syntactic layer' };
  }
  const sense = stated(signs, file);
  const leaf = (name, sign) => (name === 'end of statement' ? sign?.kind === name : shared.leaf(name, sign));
  const chains = matcher(rules, sense, { ...shared, leaf }).match('chain file');
  if (!chains) {
    return { failed: 'What may stand where' };
  }
  return { letters: lettersOf(text, marks, [[file, signs], [chains, sense]]) };
}

const letterOfKind = {
  word: 's', number: 'n', 'colon number': 'n', fraction: 'n', 'unit sign': 'u', string: 't', prose: 'o', comment: 'c',
  continuation: 'p', '=': 'p', '{': 'p', '}': 'p',
};

const letterOfRule = { head: 'S', 'inner head': 'S', unit: 'u', name: 'N' };

function lettersOf(text, marks, matches) {
  const letters = Array.from(text, () => '.');
  const paint = ({ from, to }, letter) => letters.fill(letter, from, to);
  marks.filter(({ kind }) => kind in letterOfKind).forEach(mark => paint(mark, letterOfKind[mark.kind]));
  for (const [whole, signs] of matches) {
    for (const { name, from } of within(whole, Object.keys(letterOfRule))) {
      paint(signs[from], letterOfRule[name]);
    }
    for (const range of within(whole, ['range'])) {
      paint(signs[below(range)[0].to], 'p');
    }
    for (const { from } of within(whole, ['one line note'])) {
      paint(signs[from + 1], 'o');
    }
  }
  return letters;
}
