// Makes src/parser, the parser of the shared grammar, and dist, the example as one page.
import { buildParserFile } from '@lezer/generator';
import { build } from 'esbuild';
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';

const grammar = new URL('../../grammar/lezer/', import.meta.url);
const parser = new URL('src/parser/', import.meta.url);

mkdirSync(parser, { recursive: true });
for (const name of ['tokens.js', 'highlight.js']) {
  cpSync(new URL(name, grammar), new URL(name, parser));
}
const made = buildParserFile(readFileSync(new URL('chain.grammar', grammar), 'utf8'), { fileName: 'chain.grammar' });
writeFileSync(new URL('parser.js', parser), made.parser);
writeFileSync(new URL('parser.terms.js', parser), made.terms);

const example = new URL('example/', import.meta.url);
const dist = new URL('dist/', import.meta.url);
await build({
  entryPoints: [new URL('page.js', example).pathname],
  outfile: new URL('page.js', dist).pathname,
  bundle: true,
  format: 'esm',
  minify: true,
  logLevel: 'warning',
});
cpSync(new URL('index.html', example), new URL('index.html', dist));
