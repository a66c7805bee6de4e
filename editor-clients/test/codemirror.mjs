// Drives the example page of ../codemirror in Chromium, against the real server behind the bridge, and checks what it shows.
// Environment: CHAINWRIGHT, CASES, CHROMIUM, SCREENSHOTS, PATIENCE_MS as for vscode.mjs.
import { spawn } from 'node:child_process';
import { accessSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { dirname, extname, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { awaited, patience } from './patience.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const launcher = resolve(process.env.CHAINWRIGHT ?? join(here, '../../server/app/target/chainwright/bin/chainwright'));
const client = join(here, '../codemirror');
const screenshots = process.env.SCREENSHOTS ?? join(here, 'target/screenshots');
const cases = JSON.parse(readFileSync(process.env.CASES ?? join(here, 'cases.json'), 'utf8'));

for (const [path, remedy] of [[launcher, 'build it, or set CHAINWRIGHT'], [join(client, 'dist/page.js'), 'run `npm run build` in ../codemirror']]) {
  try {
    accessSync(path);
  } catch {
    console.error(`no ${path}: ${remedy}`);
    process.exit(2);
  }
}

let passed = 0;
let failed = 0;

function check(name, holds, seen) {
  holds ? passed++ : failed++;
  console.log(holds ? `ok      ${name}` : `FAILED  ${name}: ${JSON.stringify(seen)}`);
}

const containsAll = (text, wanted) => wanted.every(part => text?.includes(part));
const plain = text => text.replaceAll('\u00a0', ' ');

/** Serves the built page; resolves to the server, its origin in `origin`. */
function serve() {
  const types = { '.html': 'text/html', '.js': 'text/javascript' };
  const server = createServer((request, response) => {
    const name = request.url === '/' ? 'index.html' : request.url.slice(1);
    if (!/^(index\.html|page\.js)$/.test(name)) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'content-type': types[extname(name)] }).end(readFileSync(join(client, 'dist', name)));
  });
  return new Promise(done => server.listen(0, '127.0.0.1', () => done(Object.assign(server, { origin: `http://127.0.0.1:${server.address().port}` }))));
}

/** Starts the bridge for a page from `origin`; resolves to its process, its address in `address`. */
function startBridge(origin) {
  const bridge = spawn(process.execPath, [join(client, 'bridge.mjs'), '--origin', origin, '--server', launcher], { stdio: ['ignore', 'pipe', 'inherit'] });
  return new Promise((done, fail) => {
    bridge.stdout.once('data', line => done(Object.assign(bridge, { address: line.toString().trim() })));
    bridge.once('exit', code => fail(new Error(`the bridge ended with ${code}`)));
  });
}

const folder = mkdtempSync(join(tmpdir(), 'chain-codemirror-'));
/** The text of each file without its marks, and where these stood. */
const fixtures = Object.fromEntries(
  Object.entries(cases.files).map(([name, marked]) => {
    const marks = {};
    let text = marked;
    for (let match; (match = /<\|([a-z-]+)\|>/.exec(text)); ) {
      marks[match[1]] = match.index;
      text = text.replace(match[0], '');
    }
    writeFileSync(join(folder, name), text);
    return [name, { text, marks }];
  }),
);

class Editor {
  constructor(page) {
    this.page = page;
  }

  /** Shows a file with the caret at one of its marks; returns the caret's offset. */
  async open(name, mark) {
    const { text, marks } = fixtures[name];
    await this.page.evaluate(([uri, text]) => window.openChain(uri, text), [pathToFileURL(join(folder, name)).href, text]);
    const at = mark === undefined ? 0 : marks[mark];
    await this.page.evaluate(at => {
      window.view.dispatch({ selection: { anchor: at } });
      window.view.focus();
    }, at);
    return at;
  }

  text() {
    return this.page.evaluate(() => window.view.state.doc.toString());
  }

  async line(at) {
    return this.page.evaluate(at => window.view.state.doc.lineAt(at).text, at);
  }

  /** The text under the squiggles, one a squiggle. */
  squiggles() {
    return this.page.locator('.cm-lintRange').allInnerTexts();
  }

  /** What floats over the text where the mouse rests at `at`. */
  async tooltipAt(at, selector) {
    const { left, right, top, bottom } = await this.page.evaluate(at => {
      const start = window.view.coordsAtPos(at, 1);
      const end = window.view.coordsAtPos(at + 1, -1);
      return { left: start.left, right: end.left, top: start.top, bottom: start.bottom };
    }, at);
    // Away first: only a mouse that moves asks.
    await this.page.mouse.move(600, 500);
    await this.page.mouse.move((left + right) / 2, (top + bottom) / 2, { steps: 4 });
    const tooltip = this.page.locator(`.cm-tooltip ${selector}`).first();
    await tooltip.waitFor({ timeout: patience });
    return tooltip;
  }

  shot(name) {
    return this.page.screenshot({ path: join(screenshots, `codemirror-${name}.png`) });
  }
}

const example = `# "Second ferry": a voice, and a nylon-string guitar an arm's length away.
chain lead "Lead vocal, front room" {
  source  lead-vocal
  take    "takes/ferry.wav" 0:12 to 0:48

  de-ess      band 5.5 to 9 kHz  threshold -32 dBFS  max-reduction 4 dB
    note "Before the compressor, so that no s pulls down the vowel behind it."
  high-pass   66 Hz  18 dB/oct  as rumble
    > \`rumble\` stays: the pier is never still.
  compressor  threshold -20 dBFS  ratio 2:1
    ... attack 15 ms  release 140 ms  key guitar
  bell        3.1 kHz  -2 dB  Q 1.8
}

chain guitar { source acoustic-guitar }
`;

const checks = {
  async colours({ page }, editor) {
    await page.evaluate(([uri, text]) => window.openChain(uri, text), [pathToFileURL(join(folder, 'example.chain')).href, example]);
    const colourOf = word =>
      page.evaluate(word => {
        const span = [...document.querySelectorAll('.cm-line span')].find(span => span.textContent.trim() === word && span.children.length === 0);
        return span && getComputedStyle(span).color;
      }, word);
    const stage = await awaited(() => colourOf('de-ess'));
    const ink = await page.evaluate(() => getComputedStyle(document.querySelector('.cm-line')).color);
    const seen = { stage, text: await colourOf('"takes/ferry.wav"'), number: await colourOf('5.5'), comment: await colourOf(example.split('\n')[0]) };
    check('colours: stage, text, number and comment differ, and none is plain ink', new Set([...Object.values(seen), ink]).size === 5, seen);
    check('colours: a chain and a stage are of one class', stage === (await colourOf('chain')), stage);
    await editor.shot('colours');
    await page.locator('.cm-foldGutter span[title="Fold line"]').first().click();
    const folded = await awaited(async () => (await page.locator('.cm-foldPlaceholder').count()) === 1);
    check('folding: a block folds at its line', folded && !(await page.locator('.cm-content').innerText()).includes('rumble'), folded);
  },

  async diagnostics({ page }, editor) {
    const { file, all, 'clean-file': clean } = cases.diagnostics;
    await editor.open(file);
    const found = await awaited(async () => (await editor.squiggles()).length >= all.length);
    const words = all.map(({ from, to }) => fixtures[file].text.slice(fixtures[file].marks[from], fixtures[file].marks[to]));
    check('diagnostics: each underlines its words and there are no others', found && JSON.stringify(await editor.squiggles()) === JSON.stringify(words), await editor.squiggles());
    for (const { code, from, shows } of all) {
      const tooltip = await editor.tooltipAt(fixtures[file].marks[from], '.cm-diagnostic');
      const said = plain(await tooltip.innerText());
      check(`diagnostics: ${code} says why`, containsAll(said, shows), said);
    }
    await editor.shot('diagnostics');
    await editor.open(clean);
    check('diagnostics: none in a clean file', await awaited(async () => (await editor.squiggles()).length === 0), await editor.squiggles());
  },

  async hover({ page }, editor) {
    const { file, at, first, shows, image } = cases.hover;
    const offset = await editor.open(file, at);
    const tooltip = await editor.tooltipAt(offset + 1, '.cm-lsp-hover-tooltip');
    const text = plain(await tooltip.innerText());
    check('hover: the answer stands first', containsAll(text.split('\n')[0], first), text);
    check('hover: says what it should', containsAll(text, shows), text);
    check('hover: no raw image data', !text.includes('base64'), text.slice(0, 200));
    const picture = tooltip.locator('img').first();
    const size = await awaited(async () => {
      const natural = await picture.evaluate(img => img.complete && { width: img.naturalWidth, height: img.naturalHeight }, undefined, { timeout: patience });
      return natural.width > 0 && natural;
    });
    check('hover: its image is drawn in the size it should be', size?.width === image.width && size?.height === image.height, size);
    await editor.shot('hover');
    await page.mouse.move(600, 500);
  },

  async completion({ page }, editor) {
    for (const { name, file, at, offers, withholds, accept, 'line-after': after } of cases.completion) {
      const offset = await editor.open(file, at);
      await page.keyboard.press('Control+Space');
      const labels = await awaited(async () => {
        const shown = await page.locator('.cm-tooltip-autocomplete .cm-completionLabel').allInnerTexts();
        return shown.length > 0 && shown;
      });
      check(`completion of ${name}: offers what fits`, labels && offers.every(word => labels.includes(word)), labels);
      check(`completion of ${name}: withholds what does not`, labels && !withholds.some(word => labels.includes(word)), labels);
      if (name === 'stages') {
        await editor.shot('completion');
      }
      await page.locator('.cm-tooltip-autocomplete li', { hasText: accept }).first().click();
      const written = await awaited(async () => (await editor.line(offset)).startsWith(after));
      check(`completion of ${name}: accepting writes the word`, written, await editor.line(offset));
    }
  },

  async format({ page }, editor) {
    const { file, 'text-after': after } = cases.format;
    await editor.open(file);
    await page.keyboard.press('Shift+Alt+f');
    check('format: lays the text out', await awaited(async () => (await editor.text()) === after), await editor.text());
    await page.keyboard.press('Shift+Alt+f');
    await new Promise(done => setTimeout(done, 500));
    check('format: a second time changes nothing', (await editor.text()) === after, await editor.text());
  },

  async rename({ page }, editor) {
    const { file, at, to, 'lines-after': after } = cases['rename-label'];
    await editor.open(file, at);
    await page.keyboard.press('F2');
    const input = page.locator('.cm-panel input');
    await input.waitFor({ timeout: patience });
    await input.fill(to);
    await page.keyboard.press('Enter');
    const renamed = await awaited(async () => {
      const lines = (await editor.text()).split('\n');
      return [after[file]].flat().every(line => lines.includes(line));
    });
    check('rename: a label, and its mention in a note', renamed, await editor.text());
  },

  async signature({ page }, editor) {
    const { file, at, active } = cases.signature;
    await editor.open(file, at);
    await page.keyboard.press('Control+Shift+Space');
    // This client shows what a stage does, not what its setting does.
    const shown = await awaited(async () => plain((await page.locator('.cm-lsp-active-parameter').allInnerTexts()).join()) === active);
    check('signature: sets off the setting at the caret', shown, await page.locator('.cm-tooltip').allInnerTexts());
    await editor.shot('signature');
  },

  async indentation({ page }, editor) {
    await page.evaluate(() => window.openChain('untitled:indent.chain', 'chain lead {'));
    await page.evaluate(() => {
      window.view.dispatch({ selection: { anchor: window.view.state.doc.length } });
      window.view.focus();
    });
    await page.keyboard.press('Enter');
    await page.keyboard.type('parallel {');
    await page.keyboard.press('Enter');
    await page.keyboard.type('path "dry"');
    check('indentation: two blanks a level', /^chain lead \{\n {2}parallel \{\n {4}path "dry"/.test(await editor.text()), await editor.text());
  },
};

async function checkRefusals(address) {
  const answer = (url, origin) =>
    fetch(url.replace('ws:', 'http:'), {
      headers: { origin, connection: 'Upgrade', upgrade: 'websocket', 'sec-websocket-version': '13', 'sec-websocket-key': 'AAAAAAAAAAAAAAAAAAAAAA==' },
    }).then(response => response.status, trouble => trouble.cause?.code ?? String(trouble));
  check('bridge: another page is refused', (await answer(address, 'http://elsewhere.example')) !== 101, 'accepted');
  check('bridge: an address without the secret is refused', (await answer(address.replace(/\/[0-9a-f]+$/, '/'), 'http://127.0.0.1')) !== 101, 'accepted');
}

mkdirSync(screenshots, { recursive: true });
const site = await serve();
const bridge = await startBridge(site.origin);
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox'] });
try {
  const page = await browser.newPage({ viewport: { width: 1000, height: 620 } });
  page.setDefaultTimeout(patience);
  const troubles = [];
  page.on('pageerror', trouble => troubles.push(trouble.message));
  await page.goto(`${site.origin}/#${bridge.address}`);
  await page.locator('.cm-editor').waitFor();
  const editor = new Editor(page);
  for (const [name, run] of Object.entries(checks)) {
    try {
      await run({ page }, editor);
    } catch (trouble) {
      check(`${name}: runs to its end`, false, trouble.message);
      await editor.shot(`${name}-failed`).catch(() => undefined);
    }
  }
  check('page: no errors', troubles.length === 0, troubles);
  await checkRefusals(bridge.address);
} finally {
  await browser.close();
  bridge.removeAllListeners('exit');
  bridge.kill();
  site.close();
  rmSync(folder, { recursive: true });
}
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
