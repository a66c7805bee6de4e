// Reads every chain of the corpus, the examples and the demo, and lines put together at random from their marks, with the
// grammars of editors and with the server, and says where they take a word for different things.
// usage: node agree.mjs [GRAMMAR…]   (default: all; CHAINWRIGHT: the launcher to compare with)
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { classes, differences, linesOf } from './classes.mjs';
import { shuffled } from './shuffled.mjs';
import { read as readServer } from './server.mjs';

const grammars = ['textmate', 'lezer', 'vim', 'neovim', 'kate', 'emacs'];

// Vim's patterns know the line above but no whole statement, so that lines which nobody writes can deceive them.
const readsWrittenOnly = new Set(['vim', 'neovim']);

const here = dirname(fileURLToPath(import.meta.url));
const grammarFolder = dirname(here);
const launcher = process.env.CHAINWRIGHT ?? join(here, '../../server/app/target/chainwright/bin/chainwright');

function chainsBelow(folder) {
  return readdirSync(folder, { recursive: true })
    .filter(name => name.endsWith('.chain'))
    .sort()
    .map(name => join(folder, name))
    .map(path => ({ name: relative(grammarFolder, path), text: readFileSync(path, 'utf8') }));
}

/** A sentence for each place where two readings of a file part. */
function disagreements(file, grammar, ours, theirs) {
  return linesOf(file.text).flatMap((line, number) =>
    differences(line, ours[number], theirs[number]).map(({ from, to, ours, theirs }) => {
      const words = Array.from(line).slice(from, to).join('');
      return `${file.name}:${number + 1}:${from + 1}: \`${words}\` is ${classes[ours]} to the server, ${classes[theirs]} to ${grammar}`;
    }),
  );
}

const written = ['corpus', 'examples', 'demo'].flatMap(folder => chainsBelow(join(grammarFolder, folder)));
const files = [...written, ...shuffled(written)];
const asked = process.argv.slice(2);
const server = await readServer(files, launcher);
let passed = 0;
let failed = 0;

for (const grammar of asked.length > 0 ? asked : grammars) {
  const { read } = await import(`./${grammar}.mjs`);
  const taken = readsWrittenOnly.has(grammar) ? written : files;
  const theirs = await read(taken);
  const classified = server.slice(0, taken.length).flat().join('').replaceAll('.', '').length;
  const faults = taken.flatMap((file, index) => disagreements(file, grammar, server[index], theirs[index]));
  const counts = `${written.length} files and ${taken.length - written.length} shuffled ones, ${classified} characters with a class`;
  console.log(`${faults.length === 0 ? 'ok     ' : 'FAILED '} ${grammar}: ${counts}, ${faults.length} disagreements`);
  faults.forEach(fault => console.log(`        ${fault}`));
  faults.length === 0 ? passed++ : failed++;
}

console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
