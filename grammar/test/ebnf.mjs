// Reads chain.ebnf itself and holds it to the corpus: every right file is read by its three layers, each character in the class
// that the server gives it, and a wrong file is refused exactly where its mistake is one of grammar.
// usage: node ebnf.mjs   (CHAINWRIGHT: the launcher to compare with)
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { classes, differences, linesOf } from './classes.mjs';
import { beyond, refusedAllTheSame } from './ebnf/beyond.mjs';
import { readChain } from './ebnf/layers.mjs';
import { readEbnf } from './ebnf/read.mjs';
import { read as readServer } from './server.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const grammar = dirname(here);
const launcher = process.env.CHAINWRIGHT ?? join(here, '../../server/app/target/chainwright/bin/chainwright');
const rules = readEbnf(readFileSync(join(grammar, 'chain.ebnf'), 'utf8'));
let failed = 0;
let passed = 0;

function check(name, count, faults) {
  console.log(`${faults.length === 0 ? 'ok     ' : 'FAILED '} ${name}: ${count} files, ${faults.length} faults`);
  faults.forEach(fault => console.log(`        ${fault}`));
  faults.length === 0 && count > 0 ? passed++ : failed++;
}

function chainsIn(folder) {
  return readdirSync(join(grammar, folder))
    .filter(name => name.endsWith('.chain'))
    .sort()
    .map(name => ({ name: name.slice(0, -'.chain'.length), text: readFileSync(join(grammar, folder, name), 'utf8') }));
}

/** The codes that the corpus gives to each wrong file, by its name; a row without one goes on with the file above. */
function codesOfWrongFiles() {
  const codes = new Map();
  let file;
  for (const [, name, code] of readFileSync(join(grammar, 'corpus/README.md'), 'utf8').matchAll(/^\| *([a-z0-9-]*) *\| *`([a-z-]+)` *\| *\d+ *\|/gm)) {
    file = name || file;
    codes.set(file, [...(codes.get(file) ?? []), code]);
  }
  return codes;
}

/** The classes of a text's characters, line by line. */
function lettersByLine(text, letters) {
  let at = 0;
  return text.split(/(\r\n|\r|\n)/).flatMap((part, index) => {
    const length = Array.from(part).length;
    at += length;
    return index % 2 === 0 ? [letters.slice(at - length, at).join('')] : [];
  });
}

const right = ['corpus/right', 'examples', 'demo'].flatMap(chainsIn);
const readings = right.map(({ text }) => readChain(rules, text));
check('right files are read', right.length, right.flatMap(({ name }, index) => (readings[index].failed ? [`${name}: not by the layer "${readings[index].failed}"`] : [])));

const server = await readServer(right, launcher);
const parting = right.flatMap(({ name, text }, index) => {
  const theirs = lettersByLine(text, readings[index].letters ?? []);
  return linesOf(text).flatMap((line, number) =>
    differences(line, server[index][number], theirs[number]).map(
      ({ from, to, ours, theirs }) =>
        `${name}:${number + 1}:${from + 1}: \`${Array.from(line).slice(from, to).join('')}\` is ${classes[ours]} to the server, ${classes[theirs]} to the EBNF`,
    ),
  );
});
check('right files have the classes of the server', right.length, parting);

const codes = codesOfWrongFiles();
const wrong = chainsIn('corpus/wrong');
const accepted = [];
const faults = wrong.flatMap(({ name, text }) => {
  const told = codes.get(name);
  if (!told) {
    return [`${name}: the corpus does not say what is wrong`];
  }
  const isRefused = readChain(rules, text).failed !== undefined;
  const isOfGrammar = name in refusedAllTheSame || told.some(code => !(code in beyond));
  if (!isRefused) {
    accepted.push(`${name}: ${[...new Set(told.map(code => beyond[code] ?? code))].join('; ')}`);
  }
  return isRefused === isOfGrammar ? [] : [`${name} (${told.join(', ')}): is ${isRefused ? 'refused, and nothing says that it should be' : 'accepted'}`];
});
check('wrong files are refused where grammar decides', wrong.length, faults);
const unused = [
  ...Object.keys(beyond).filter(code => ![...codes.values()].flat().includes(code)),
  ...Object.keys(refusedAllTheSame).filter(name => !codes.has(name)),
];
check('what is said to be beyond the grammar is in the corpus', wrong.length, unused);
console.log(`of ${wrong.length} wrong files the EBNF refuses ${wrong.length - accepted.length}; these ${accepted.length} have mistakes beyond it:`);
accepted.forEach(line => console.log(`        ${line}`));
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
