// The classes of the TextMate grammar, by the engine that Visual Studio Code runs.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';
import { lettersOf, linesOf } from './classes.mjs';

const grammarFile = new URL('../chain.tmLanguage.json', import.meta.url);

const letterOf = [
  ['keyword.control', 'S'],
  ['variable.other.property', 's'],
  ['entity.name.function', 'N'],
  ['constant.numeric', 'n'],
  ['keyword.other.unit', 'u'],
  ['string.quoted', 't'],
  ['comment.block.documentation', 'o'],
  ['comment.line', 'c'],
  ['punctuation', 'p'],
  ['keyword.operator', 'p'],
];

function letter(scopes) {
  return letterOf.find(([prefix]) => scopes.at(-1).startsWith(prefix))?.[1] ?? '.';
}

export async function read(files) {
  await oniguruma.loadWASM(readFileSync(createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm')));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve(oniguruma),
    loadGrammar: async () => textmate.parseRawGrammar(readFileSync(grammarFile, 'utf8'), grammarFile.pathname),
  });
  const grammar = await registry.loadGrammar('source.chain');
  return files.map(({ text }) => {
    let state = textmate.INITIAL;
    return linesOf(text).map(line => {
      const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
      state = ruleStack;
      return lettersOf(line, tokens.map(({ startIndex, endIndex, scopes }) => ({ from: startIndex, to: endIndex, letter: letter(scopes) })));
    });
  });
}
