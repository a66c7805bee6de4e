// Writes dist/licences.txt: the licence of every package that esbuild put into the bundle.
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';

const inputs = Object.keys(JSON.parse(readFileSync('dist/meta.json', 'utf8')).inputs);
const folders = new Set(inputs.map(path => /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0]).filter(Boolean));
const texts = [...folders].sort().map(folder => {
  const { name, version } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  const file = readdirSync(folder).find(entry => /^licen[cs]e/i.test(entry));
  if (!file) {
    throw new Error(`${folder} has no licence file`);
  }
  return `${name} ${version}\n\n${readFileSync(`${folder}/${file}`, 'utf8').trim()}\n`;
});
writeFileSync('dist/licences.txt', texts.join(`\n${'-'.repeat(72)}\n\n`));
