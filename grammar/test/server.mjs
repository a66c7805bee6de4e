// The classes of the server: what it answers to `textDocument/semanticTokens/full`.
import { spawn } from 'node:child_process';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node.js';
import { lettersOf, linesOf } from './classes.mjs';

const letterOf = { keyword: 'S', property: 's', variable: 'N', number: 'n', type: 'u', string: 't', comment: 'c', operator: 'p' };

/** The letters of each text, by the server that `launcher` starts. */
export async function read(files, launcher) {
  const server = spawn(launcher, ['lsp'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const gone = new Promise(done => server.on('exit', done));
  const connection = createMessageConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin));
  connection.listen();
  const { capabilities } = await connection.sendRequest('initialize', {
    processId: process.pid,
    rootUri: null,
    capabilities: { textDocument: { semanticTokens: { requests: { full: true }, tokenTypes: [], tokenModifiers: [], formats: ['relative'] } } },
  });
  await connection.sendNotification('initialized', {});
  const { tokenTypes, tokenModifiers } = capabilities.semanticTokensProvider.legend;
  const documentation = 1 << tokenModifiers.indexOf('documentation');
  const read = [];
  for (const [index, { text }] of files.entries()) {
    const uri = `untitled:${index}.chain`;
    await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'chain', version: 1, text } });
    const { data } = await connection.sendRequest('textDocument/semanticTokens/full', { textDocument: { uri } });
    await connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
    const lines = linesOf(text);
    const spans = lines.map(() => []);
    let line = 0;
    let from = 0;
    for (let i = 0; i < data.length; i += 5) {
      line += data[i];
      from = data[i + 1] + (data[i] === 0 ? from : 0);
      const letter = data[i + 4] & documentation ? 'o' : letterOf[tokenTypes[data[i + 3]]];
      spans[line].push({ from, to: from + data[i + 2], letter });
    }
    read.push(lines.map((text, i) => lettersOf(text, spans[i])));
  }
  await connection.sendRequest('shutdown');
  await connection.sendNotification('exit');
  await gone;
  connection.dispose();
  return read;
}
