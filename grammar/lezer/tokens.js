// What a word is depends on what stands before it, and a line's first mark on the line: more than Lezer's own tokens can see.
import { ExternalTokenizer } from '@lezer/lr';
import {
  Continuation, joint, lineEnd, markWord, namingWord, noteWord, Number, Prose, To, Unit, word,
} from './parser.terms.js';

// The words that the server lists, held to it by a test; units in lower case.
const namingStatements = new Set('apply bus chain group preset send source spill to'.split(' '));
const namingMarks = new Set('as deliberate key'.split(' '));
const units = new Set('bit bits bpm db db/oct db/octave dbfs dbtp dbu hertz hz k khz kilohertz lkfs lu lufs m ms msec oct octave octaves percent s sample samples sec us µs μs'.split(' '));

const number =
  /^[+\-−–]?(?:\d+\/\d+|\d+(?::\d+)+(?:\.(?!\.)\d*|,\d+)?|(?=\.?\d)\d*(?:\.(?!\.)\d*|,\d+)?(?::\d+(?:\.\d*)?)?)/;
const blank = /[\t\v\f\p{Zs}\u200b\ufeff]/u;
const letter = /\p{L}/u;
const wordPart = /[\p{L}\p{Nd}_-]/u;
const newline = 10;
const ellipsis = 0x2026;

function at(input, offset) {
  const code = input.peek(offset);
  return code < 0 ? '' : String.fromCharCode(code);
}

/** How far behind `offset` the blanks end. */
function behindBlanks(input, offset) {
  while (blank.test(at(input, offset))) {
    offset++;
  }
  return offset;
}

/** Where the last character before the blanks before the next one stands. */
function beforeBlanks(input) {
  let offset = -1;
  while (blank.test(at(input, offset))) {
    offset--;
  }
  return offset;
}

/** How long the mark of a continuation is at `offset`; 0 where there is none. */
function continuationAt(input, offset) {
  if (input.peek(offset) === ellipsis) {
    return 1;
  }
  return [0, 1, 2].every(ahead => at(input, offset + ahead) === '.') ? 3 : 0;
}

function wordLength(input) {
  if (!letter.test(at(input, 0))) {
    return 0;
  }
  let length = 1;
  while (wordPart.test(at(input, length)) || (at(input, length) === '/' && letter.test(at(input, length + 1)))) {
    length++;
  }
  return length;
}

function numberLength(input, offset) {
  let signs = '';
  while (/[\d+\-−–.,:/]/.test(at(input, offset + signs.length))) {
    signs += at(input, offset + signs.length);
  }
  return number.exec(signs)?.[0].length ?? 0;
}

function kindOf(text, input, stack) {
  const before = beforeBlanks(input);
  // What a line goes on with belongs to no number of the line above.
  const isBehindContinuation = continuationAt(input, before - 2) === 3 || continuationAt(input, before) === 1;
  if (!isBehindContinuation) {
    if (stack.canShift(Unit) && (before === -1 || units.has(text.toLowerCase()))) {
      return Unit;
    }
    if (stack.canShift(To) && text === 'to' && numberLength(input, behindBlanks(input, text.length)) > 0) {
      return To;
    }
  }
  if (text === 'note') {
    return noteWord;
  }
  return namingStatements.has(text) ? namingWord : namingMarks.has(text) ? markWord : word;
}

export const marks = new ExternalTokenizer(
  (input, stack) => {
    if (input.next === newline) {
      input.acceptToken(continuationAt(input, behindBlanks(input, 1)) ? joint : lineEnd, 1);
      return;
    }
    const length = wordLength(input);
    if (length > 0) {
      let text = '';
      for (let i = 0; i < length; i++) {
        text += at(input, i);
      }
      input.acceptToken(kindOf(text, input, stack), length);
      return;
    }
    const before = input.peek(beforeBlanks(input));
    const isFirst = before === newline || before === -1;
    const continuation = continuationAt(input, 0);
    const digits = numberLength(input, 0);
    if (isFirst && continuation > 0) {
      input.acceptToken(Continuation, continuation);
    } else if (continuation === 0 && digits > 0) {
      input.acceptToken(Number, digits);
    } else if (isFirst && at(input, 0) === '>') {
      let end = 1;
      while (input.peek(end) !== newline && input.peek(end) >= 0) {
        end++;
      }
      input.acceptToken(Prose, end);
    }
  },
  { contextual: true },
);
