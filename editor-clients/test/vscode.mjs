// Drives the extension of ../vscode in a real Visual Studio Code (code-server in Chromium) and checks what it shows.
// How to get its parts is in README.md. Environment:
//   CHAINWRIGHT   the launcher to test (default: the one that the build lays out)
//   CASES         the expectations (default: cases.json)
//   PACKAGE       an extension with a server inside, which is driven in place of CHAINWRIGHT (default: none)
//   JAVA          with PACKAGE: `none` if no Java is to be found, so that the package's own must do (default: system)
//   CODE_SERVER   the folder that install-code-server.sh filled (default: /opt/code-server)
//   CHROMIUM      the browser (default: /usr/bin/chromium)
//   SCREENSHOTS   a folder for pictures (default: target/screenshots beside this file)
//   ONLY          the names of checks, divided by commas (default: all; with PACKAGE, those that need its server alone)
//   PICTURES      a folder for the pictures of the extension's README (default: none are taken)
//   PATIENCE_MS   how long to wait for what must come (default: 20000)
import { accessSync, constants, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { startCodeServer } from './code-server.mjs';
import { awaited, patience } from './patience.mjs';
import { pictures, viewChecks } from './vscode-views.mjs';
import { Window, paintedLightness, plain, seenShare } from './vscode-window.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const packed = process.env.PACKAGE && resolve(process.env.PACKAGE);
const launcher = resolve(process.env.CHAINWRIGHT ?? join(here, '../../server/app/target/chainwright/bin/chainwright'));
const codeServer = join(process.env.CODE_SERVER ?? '/opt/code-server', 'node_modules/code-server/out/node/entry.js');
const extension = packed ?? join(here, '../vscode/chainwright.vsix');
const screenshots = process.env.SCREENSHOTS ?? join(here, 'target/screenshots');
const cases = JSON.parse(readFileSync(process.env.CASES ?? join(here, 'cases.json'), 'utf8'));

for (const [path, mode, remedy] of [
  ...(packed ? [] : [[launcher, constants.X_OK, 'build it, or set CHAINWRIGHT']]),
  [codeServer, constants.R_OK, 'run install-code-server.sh, or set CODE_SERVER'],
  [extension, constants.R_OK, 'run `npm run package` in ../vscode'],
]) {
  try {
    accessSync(path, mode);
  } catch {
    console.error(`no ${path}: ${remedy}`);
    process.exit(2);
  }
}

let passed = 0;
let failed = 0;

function check(name, holds, seen) {
  if (holds) {
    passed++;
    console.log(`ok      ${name}`);
  } else {
    failed++;
    console.log(`FAILED  ${name}: ${JSON.stringify(seen)}`);
  }
}

const containsAll = (text, wanted) => wanted.every(part => text.includes(part));

/** Writes the fixture folder; `marks[file][mark]` is { line, column }, both from 1, columns in UTF-16 units. */
function layOut(folder) {
  const marks = {};
  for (const [name, marked] of Object.entries(cases.files)) {
    marks[name] = {};
    const lines = marked.split('\n').map((line, index) => {
      for (let match; (match = /<\|([a-z-]+)\|>/.exec(line)); ) {
        marks[name][match[1]] = { line: index + 1, column: match.index + 1 };
        line = line.replace(match[0], '');
      }
      return line;
    });
    writeFileSync(join(folder, name), lines.join('\n'));
  }
  return marks;
}

async function checkRename(editor, section) {
  const { file, at, to, 'lines-after': after } = cases[section];
  await editor.open(file, at);
  await editor.page.keyboard.press('F2');
  const input = editor.page.locator('.rename-box input');
  await input.waitFor({ timeout: patience });
  await input.fill(to);
  await editor.page.keyboard.press('Enter');
  for (const [name, wanted] of Object.entries(after)) {
    await editor.open(name);
    const done = await awaited(async () => {
      const lines = await editor.lines();
      return [wanted].flat().every(line => lines.includes(line));
    });
    check(`${section}: reaches ${name}`, done, await editor.lines());
  }
}

const checks = {
  async hover(editor) {
    const { file, at, first, shows, image } = cases.hover;
    await editor.open(file, at);
    const widget = await editor.hover();
    const text = plain(await widget.innerText());
    check('hover: the answer stands first', containsAll(text.split('\n')[0], first), text);
    check('hover: says what it should', containsAll(text, shows), text);
    check('hover: no raw image data', !text.includes('base64'), text.slice(0, 200));
    const picture = widget.locator('img').first();
    const size = await awaited(async () => {
      if ((await picture.count()) === 0) {
        return undefined;
      }
      const natural = await picture.evaluate(img => img.complete && { width: img.naturalWidth, height: img.naturalHeight });
      return natural.width > 0 && natural;
    });
    check('hover: its image is decoded', size?.width > 0, size);
    check('hover: its image has the size it should', size?.width === image.width && size?.height === image.height, size);
    const share = await awaited(async () => {
      const seen = await seenShare(picture);
      return seen >= image['seen-at-least'] && seen;
    });
    check('hover: its image is seen without scrolling', share, await seenShare(picture));
    await editor.shot('hover');
    const light = await picture.evaluate(paintedLightness);
    check('hover: its ground is light in a light theme', light > 0.5, light);
    await editor.page.keyboard.press('Escape');
    await editor.command('Toggle between Light/Dark Themes');
    await editor.page.locator('.monaco-workbench.vs-dark').waitFor({ timeout: patience });
    let ground;
    const onDark = async hover => (ground = await hover.locator('img').first().evaluate(paintedLightness)) < 0.5;
    const dark = await editor.hover(onDark).catch(() => undefined);
    check('hover: its ground is dark in a dark theme', dark, ground);
    await editor.shot('hover-dark');
    await editor.page.keyboard.press('Escape');
    await editor.command('Toggle between Light/Dark Themes');
    await editor.page.locator('.monaco-workbench.vs').waitFor({ timeout: patience });
  },

  async diagnostics(editor) {
    const { file, all, 'clean-file': clean } = cases.diagnostics;
    await editor.open(file);
    const opened = Date.now();
    await awaited(async () => (await editor.squiggles()) >= all.length);
    const waited = Date.now() - opened;
    check('diagnostics: a squiggle each and no others', (await editor.squiggles()) === all.length, await editor.squiggles());
    await editor.command('Problems: Focus on Problems View');
    const problems = await awaited(async () => {
      const rows = (await editor.problems()).filter(row => row !== '');
      return rows.length >= all.length && rows;
    });
    check('diagnostics: each listed once and no others', problems?.length === all.length, problems);
    for (const { code, shows, from } of all) {
      const row = (problems || []).find(text => text.includes(code));
      check(`diagnostics: ${code} is listed`, row !== undefined, problems);
      check(`diagnostics: ${code} says why`, row !== undefined && containsAll(row, shows), row);
      const { line, column } = editor.marks[file][from];
      check(`diagnostics: ${code} starts at its words`, row?.includes(`[Ln ${line}, Col ${column}]`) === true, row);
    }
    await editor.shot('diagnostics');
    await editor.page.keyboard.press('Control+j');
    await editor.page.locator('.markers-panel').waitFor({ state: 'hidden', timeout: patience });
    await editor.open(clean);
    // Long enough for the faults of the other file to have shown; nothing says that an answer without faults has come.
    await new Promise(done => setTimeout(done, 2 * waited + 500));
    check('diagnostics: none in a clean file', (await editor.squiggles()) === 0, await editor.squiggles());
  },

  async completion(editor) {
    for (const { name, file, at, offers, withholds, accept, 'line-after': after } of cases.completion) {
      await editor.open(file, at);
      await editor.page.keyboard.press('Control+Space');
      const rows = editor.page.locator('.suggest-widget.visible .monaco-list-row .label-name');
      await rows.first().waitFor({ timeout: patience });
      const words = await rows.allTextContents();
      for (const word of offers) {
        check(`completion of ${name}: offers ${word}`, words.includes(word), words);
      }
      for (const word of withholds) {
        check(`completion of ${name}: withholds ${word}`, words.length > 0 && !words.includes(word), words);
      }
      await editor.shot(`completion-${name}`);
      await rows.getByText(accept, { exact: true }).first().click({ timeout: patience });
      const { line } = editor.marks[file][at];
      const written = await awaited(async () => (await editor.line(line)).startsWith(after));
      check(`completion of ${name}: accepting writes the word`, written, await editor.line(line));
    }
  },

  async fix(editor) {
    const { file, at, title, 'line-after': after } = cases.fix;
    await editor.open(file, at);
    const faulty = await awaited(async () => (await editor.squiggles()) > 0);
    check('fix: the fault is shown first', faulty, await editor.lines());
    await editor.page.keyboard.press('Control+.');
    const menu = editor.page.locator('.action-widget .monaco-list-row');
    await menu.first().waitFor({ timeout: patience });
    const titles = await menu.allTextContents();
    check('fix: is offered', titles.some(text => text.includes(title)), titles);
    await editor.shot('fix');
    for (let steps = 0; steps < titles.length; steps++) {
      const chosen = await editor.page.locator('.action-widget .monaco-list-row.focused').allTextContents();
      if (chosen.some(text => text.includes(title))) {
        break;
      }
      await editor.page.keyboard.press('ArrowDown');
    }
    await editor.page.keyboard.press('Enter');
    const { line } = editor.marks[file][at];
    const mended = await awaited(async () => (await editor.line(line)) === after);
    check('fix: mends the line', mended, await editor.line(line));
    const gone = await awaited(async () => (await editor.squiggles()) === 0);
    check('fix: its diagnostic goes', mended && gone, await editor.squiggles());
  },

  async format(editor) {
    const { file, 'text-after': after } = cases.format;
    await editor.open(file);
    await editor.command('Format Document');
    const done = await awaited(async () => (await editor.lines()).join('\n') === after);
    check('format: lays the text out', done, await editor.lines());
  },

  async rename(editor) {
    await checkRename(editor, 'rename');
  },

  async 'rename-label'(editor) {
    await checkRename(editor, 'rename-label');
  },

  async signature(editor) {
    const { file, at, shows, active, says } = cases.signature;
    await editor.open(file, at);
    const widget = editor.page.locator('.parameter-hints-widget.visible');
    await awaited(async () => {
      await editor.command('Trigger Parameter Hints');
      return widget.waitFor({ timeout: 2000 }).then(() => true, () => false);
    });
    const text = plain(await widget.innerText());
    // The widget sets one blank where the label has two.
    const shown = shows.map((part) => part.replace(/ +/g, ' '));
    check('signature: shows the settings', containsAll(text.replace(/ +/g, ' '), shown), text);
    check('signature: explains the setting at the caret', containsAll(text, says), text);
    const marked = await widget.locator('.parameter.active').allTextContents();
    check('signature: sets off the setting at the caret', plain(marked.join('')) === active, marked);
    await editor.shot('signature');
    await editor.page.keyboard.press('Escape');
  },

  async highlight(editor) {
    const { file, at, all } = cases.highlight;
    await editor.open(file, at);
    const marked = editor.page.locator('.editor-instance .cdr.wordHighlight, .editor-instance .cdr.wordHighlightStrong');
    const shown = await awaited(async () => (await marked.count()) === all.length);
    check('highlight: each mention of the name', shown, await marked.count());
    // The place where the name is given is set off from its uses: words that only look alike would not be.
    const given = editor.page.locator('.editor-instance .cdr.wordHighlightStrong');
    check('highlight: tells where it is given', (await given.count()) === 1, await given.count());
  },

  async hints(editor) {
    const { file, at, shows } = cases.hints;
    await editor.open(file, at);
    const { line } = editor.marks[file][at];
    // The settings keep hints hidden until these are held down, so that the other checks read the text alone.
    await editor.page.keyboard.down('Control');
    await editor.page.keyboard.down('Alt');
    const shown = await awaited(async () => containsAll(await editor.line(line), shows));
    check('hints: are shown in the line', shown, await editor.line(line));
    await editor.shot('hints');
    await editor.page.keyboard.up('Alt');
    await editor.page.keyboard.up('Control');
  },
};

const folder = mkdtempSync(join(tmpdir(), 'chain-vscode-'));
const work = join(folder, 'work');
mkdirSync(work);
mkdirSync(screenshots, { recursive: true });
const marks = layOut(work);
let running;
let browser;
try {
  running = await startCodeServer({
    entry: codeServer,
    extension,
    launcher: packed ? undefined : launcher,
    folder,
    isWithoutJava: process.env.JAVA === 'none',
  });
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(patience);
  await page.goto(`${running.url}/?folder=${encodeURIComponent(work)}`);
  await page.locator('.monaco-workbench .part.statusbar').waitFor({ timeout: 60000 });
  const editor = new Window(page, marks, cases.hover?.first[0], screenshots);
  const run = { work, running, launcher, cases, folder };
  const all = { ...checks, ...Object.fromEntries(Object.entries(viewChecks).map(([name, of]) => [name, () => of(editor, check, run)])) };
  if (process.env.PICTURES) {
    all.pictures = () => pictures(editor, { ...run, folder: process.env.PICTURES });
  }
  const only = (process.env.ONLY ?? (packed && 'hover,diagnostics,completion,fix,status,plot,package'))?.split(',');
  for (const [name, of] of Object.entries(all)) {
    if (only ? !only.includes(name) : name === 'package') {
      continue;
    }
    if (checks[name] && !cases[name]) {
      console.log(`--      ${name}: not in the cases`);
      continue;
    }
    try {
      await of(editor);
    } catch (trouble) {
      check(`${name}: runs to its end`, false, String(trouble).slice(0, 600));
      await editor.shot(`${name}-trouble`).catch(() => undefined);
      await page.keyboard.press('Escape').catch(() => undefined);
    }
  }
} catch (trouble) {
  check('the run reaches its end', false, String(trouble).slice(0, 600));
} finally {
  await browser?.close().catch(() => undefined);
  await running?.stop();
  rmSync(folder, { recursive: true, force: true });
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);
