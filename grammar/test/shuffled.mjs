// Files that nobody would write: marks of ours in any order, for what no corpus thinks of. The same ones at each run.

const count = 40;
const lines = 30;

/** Numbers from 0 to 2³² − 1, always the same ones. Source: Marsaglia, Xorshift RNGs, J. Stat. Softw. 8(14), 2003, sec. 3. */
function numbers(seed) {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0);
  };
}

export function shuffled(files) {
  const next = numbers(20240229);
  const pick = list => list[next() % list.length];
  const marks = [...new Set(files.flatMap(({ text }) => text.match(/"[^"\n]*"?|[^\s"]+/g) ?? []))].sort();
  // What decides about other words comes often.
  const deciding = ['{', '}', '#', '>', '...', '…', '=', '%', 'to', 'as', 'key', 'deliberate', 'note', 'chain', 'send', '3', '-2.5', '0:31.2', '1/6', 'kHz', 'ms', 'm', '"a', '“b”', '//', ';', ','];
  const blanks = [' ', ' ', ' ', '  ', '', '\u00a0', '\u2009', '\t'];
  const line = () => Array.from({ length: next() % 9 }, () => pick(next() % 2 ? deciding : marks) + pick(blanks)).join('');
  return Array.from({ length: count }, (_, index) => ({
    name: `shuffled ${index + 1}`,
    text: Array.from({ length: lines }, () => pick(['', '', '  ', '... ', '  … ']) + line()).join('\n'),
  }));
}
