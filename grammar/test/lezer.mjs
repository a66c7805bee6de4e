// The classes of the Lezer grammar, by the parser that its generator makes.
import { buildParserFile } from '@lezer/generator';
import { highlightTree, tagHighlighter, tags } from '@lezer/highlight';
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { lettersOf, linesOf } from './classes.mjs';

// Below this folder, so that the parser finds the packages that it imports.
const built = new URL('target/lezer/', import.meta.url);

const letters = tagHighlighter([
  { tag: tags.keyword, class: 'S' },
  { tag: tags.propertyName, class: 's' },
  { tag: tags.labelName, class: 'N' },
  { tag: tags.number, class: 'n' },
  { tag: tags.special(tags.number), class: 'u' },
  { tag: tags.string, class: 't' },
  { tag: tags.docComment, class: 'o' },
  { tag: tags.lineComment, class: 'c' },
  { tag: tags.brace, class: 'p' },
  { tag: tags.operator, class: 'p' },
  { tag: tags.punctuation, class: 'p' },
]);

async function buildParser() {
  const grammar = new URL('../lezer/', import.meta.url);
  mkdirSync(built, { recursive: true });
  cpSync(grammar, built, { recursive: true });
  const warnings = [];
  const { parser, terms } = buildParserFile(readFileSync(new URL('chain.grammar', grammar), 'utf8'), {
    fileName: 'chain.grammar',
    warn: warning => warnings.push(warning),
  });
  if (warnings.length > 0) {
    throw new Error(warnings.join('\n'));
  }
  writeFileSync(new URL('parser.js', built), parser);
  writeFileSync(new URL('parser.terms.js', built), terms);
  return (await import(new URL('parser.js', built))).parser;
}

export async function read(files) {
  const parser = await buildParser();
  return files.map(({ text }) => {
    const lines = linesOf(text);
    const whole = lines.join('\n');
    const spans = [];
    highlightTree(parser.parse(whole), letters, (from, to, letter) => spans.push({ from, to, letter }));
    let start = 0;
    return lines.map(line => {
      const own = spans.filter(({ from, to }) => from < start + line.length && to > start);
      const letters = lettersOf(line, own.map(({ from, to, letter }) => ({ from: Math.max(0, from - start), to: Math.min(line.length, to - start), letter })));
      start += line.length + 1;
      return letters;
    });
  });
}
