#!/usr/bin/env node
// Lets a page in a browser speak to the language server: a WebSocket on this machine, and a server of its own for each connection.
// usage: bridge.mjs --origin ORIGIN [--origin ORIGIN…] [--port PORT] [--server LAUNCHER]
//   ORIGIN    where the page comes from, such as http://localhost:8000; others are refused
//   PORT      the port of the WebSocket (default: a free one)
//   LAUNCHER  the launcher of the server (default: chainwright, found on the PATH)
// Prints the address to connect to. Its path is a secret of this run.
import { spawn } from 'node:child_process';
import { randomBytes, timingSafeEqual } from 'node:crypto';
import { parseArgs } from 'node:util';
import { StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node.js';
import { WebSocketServer } from 'ws';

const largestMessage = 64 << 20;

function optionsOrExit() {
  try {
    const { values } = parseArgs({
      options: { origin: { type: 'string', multiple: true }, port: { type: 'string', default: '0' }, server: { type: 'string', default: 'chainwright' } },
    });
    if (!values.origin) {
      throw new Error('name the page with --origin, such as --origin http://localhost:8000');
    }
    if (!/^\d{1,5}$/.test(values.port) || Number(values.port) > 65535) {
      throw new Error(`the port must be a number from 0 to 65535, but was \`${values.port}\``);
    }
    return values;
  } catch (trouble) {
    console.error(trouble.message);
    process.exit(2);
  }
}

const { origin: origins, port, server: launcher } = optionsOrExit();
const path = `/${randomBytes(16).toString('hex')}`;

function isAllowed({ origin, req }) {
  const asked = Buffer.from(req.url);
  const right = Buffer.from(path);
  return origins.includes(origin) && asked.length === right.length && timingSafeEqual(asked, right);
}

const listener = new WebSocketServer({ host: '127.0.0.1', port: Number(port), verifyClient: isAllowed, maxPayload: largestMessage });

listener.on('connection', socket => {
  const server = spawn(launcher, ['lsp'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const writer = new StreamMessageWriter(server.stdin);
  new StreamMessageReader(server.stdout).listen(message => socket.send(JSON.stringify(message)));
  socket.on('message', data => {
    try {
      writer.write(JSON.parse(data.toString())).catch(() => socket.close());
    } catch {
      socket.close(1007, 'a message is one JSON text');
    }
  });
  server.on('error', trouble => {
    console.error(`\`${launcher} lsp\` cannot be run: ${trouble.message}`);
    socket.close(1011, 'the language server cannot be run');
  });
  server.stdin.on('error', () => socket.close());
  server.on('exit', () => socket.close());
  // The end of its input ends the server.
  socket.on('close', () => server.stdin.end());
});

listener.on('error', trouble => {
  console.error(trouble.message);
  process.exit(1);
});
listener.on('listening', () => console.log(`ws://127.0.0.1:${listener.address().port}${path}`));
