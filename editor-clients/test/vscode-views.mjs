// What the extension shows besides the text: its status, the view beside, its commands, its themes, and how it finds a
// server. Each check is called with the window, with `check(name, holds, seen)`, and with the run: `work` (the folder that is
// open), `running` (code-server), `launcher` and `cases`.
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync, readlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { awaited, patience } from './patience.mjs';
import { tone, peak } from './takes.mjs';
import { paintedLightness, plain } from './vscode-window.mjs';

/** The editor's themes, the class by which its window says which is shown, and the lightness of plots there. */
const themes = [
  { name: 'light', theme: 'Light Modern', shown: 'vs', lightness: [0.9, 1] },
  { name: 'dark', theme: 'Dark Modern', shown: 'vs-dark', lightness: [0.05, 0.3] },
  { name: 'contrast-dark', theme: 'Dark High Contrast', shown: 'hc-black', lightness: [0, 0] },
  { name: 'contrast-light', theme: 'Light High Contrast', shown: 'hc-light', lightness: [1, 1] },
];

const isWithin = ([low, high], value) => value >= low && value <= high;

async function wear(editor, theme, shown) {
  // By its keys: the command's title also fits another command, which the palette puts first.
  await editor.page.keyboard.press('Control+k');
  await editor.page.keyboard.press('Control+t');
  await editor.quickInput(theme, theme);
  await editor.page.locator(`.monaco-workbench.${shown}`).waitFor({ timeout: patience });
}

/** Loads the window anew, with the settings as they are now, and shows a file, which starts the extension. */
async function reload(editor, file, settings) {
  settings();
  await editor.page.reload();
  await editor.page.locator('.monaco-workbench .part.statusbar').waitFor({ timeout: 60000 });
  await editor.open(file);
  await status(editor.page).waitFor({ timeout: 3 * patience });
}

/** The text of the status item; empty where it is hidden. */
const status = page => page.locator('#chainwright\\.chainwright\\.chainwright\\.status, [id$="chainwright.status"]').first();

async function statusSays(page, words) {
  return awaited(async () => {
    const text = (await status(page).count()) > 0 ? plain(await status(page).innerText()) : '';
    return text.includes(words) && text;
  });
}

const notification = (page, words) => page.locator('.notification-list-item', { hasText: words }).first();

async function clearNotifications(editor) {
  await editor.command('Notifications: Clear All Notifications');
}

/** The page inside of the view beside. */
const beside = page => page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame');

/** Waits until the view says `words` of the line at the caret. */
async function besideSays(page, words) {
  const told = beside(page).locator('p[role=status]');
  return awaited(async () => {
    const text = (await told.count().catch(() => 0)) > 0 ? await told.innerText().catch(() => '') : '';
    return text.includes(words) && text;
  });
}

async function hidePanel({ page }) {
  if (await page.locator('.part.panel').isVisible()) {
    await page.keyboard.press('Control+j');
    await page.locator('.part.panel').waitFor({ state: 'hidden', timeout: patience });
  }
}

async function answerDialog(page, title, path) {
  const box = page.locator('.quick-input-widget:visible', { hasText: title });
  await box.waitFor({ timeout: patience });
  const input = box.locator('input[type=text]');
  // The box takes a while to read the folder, and until then answers Enter with a complaint.
  const gone = await awaited(async () => {
    if (path) {
      await input.fill(path, { timeout: 1000 }).catch(() => undefined);
    }
    await page.waitForTimeout(1000);
    // To the box and not to the keyboard: it may be gone by now, and the text behind it must not change.
    await input.press('Enter', { timeout: 1000 }).catch(() => undefined);
    return box.waitFor({ state: 'hidden', timeout: 5000 }).then(() => true, () => false);
  });
  if (!gone) {
    throw new Error(`the dialog ${title} stays`);
  }
}

const reports = page => page.locator('.output-view .view-line');

async function reportSays(page, words) {
  return awaited(async () => {
    const text = plain((await reports(page).allTextContents()).join('\n'));
    return text.includes(words) && text;
  });
}

export const viewChecks = {
  async status(editor, check, { cases }) {
    await editor.open(cases.diagnostics.file);
    const says = await statusSays(editor.page, `${cases.diagnostics.all.length} findings`);
    check('status: counts the findings of the file', says, await status(editor.page).innerText());
    await editor.open(cases.diagnostics['clean-file']);
    check('status: says that nothing is found', await statusSays(editor.page, 'nothing found'), await status(editor.page).innerText());
  },

  async plot(editor, check, { cases }) {
    const { file, lines } = cases.plot;
    await editor.open(file, lines[0].at);
    await editor.command('Chainwright: Show the plot beside');
    for (const { at, says, pictures } of lines) {
      const { line, column } = editor.marks[file][at];
      await editor.goTo(line, column);
      const told = await besideSays(editor.page, says);
      check(`plot: says ${says}`, told, await beside(editor.page).locator('body').innerText().catch(String));
      const images = beside(editor.page).locator('img');
      const drawn = await awaited(async () => {
        const widths = await images.evaluateAll(all => all.map(img => img.complete && img.naturalWidth));
        return widths.length === pictures && widths.every(width => width > 0) && widths;
      });
      check(`plot: draws ${pictures} pictures for it`, drawn, await images.count());
      const words = await images.evaluateAll(all => all.map(img => img.alt));
      check('plot: each has words for those who cannot see it', words.every(word => word.length > 20), words);
    }
    await editor.shot('plot');
    for (const { name, theme, shown, lightness } of themes) {
      await wear(editor, theme, shown);
      const image = beside(editor.page).locator('img').first();
      const painted = await awaited(async () => {
        const now = await image.evaluate(paintedLightness).catch(() => NaN);
        return isWithin(lightness, now) && `${now}`;
      });
      check(`plot: its ground goes with the theme ${name}`, painted, await image.evaluate(paintedLightness).catch(String));
      await editor.shot(`plot-${name}`);
    }
    await wear(editor, themes[0].theme, themes[0].shown);
    // An edit is drawn, too.
    const { at, typed, says } = cases.plot.edit;
    await editor.goTo(editor.marks[file][at].line, editor.marks[file][at].column);
    await editor.page.keyboard.type(typed);
    check('plot: follows an edit', await besideSays(editor.page, says), await beside(editor.page).locator('body').innerText());
    await editor.page.locator('.tab', { hasText: 'Plot: ' }).first().locator('.codicon-close').click();
  },

  async render(editor, check, { cases, work }) {
    const { file, at, take, gainDb } = cases.render;
    tone(join(work, take), 3);
    const written = join(work, 'oar-rendered.wav');
    await editor.open(file, at);
    await editor.command('Chainwright: Render this chain');
    await answerDialog(editor.page, 'Render oar');
    check('render: writes the file', await awaited(() => existsSync(written)), readdirSync(work));
    check('render: says so', await notification(editor.page, 'oar was rendered to oar-rendered.wav').waitFor({ timeout: patience }).then(() => true, () => false), '');
    check('render: shows the levels', await reportSays(editor.page, 'true peak [dBTP]'), await reports(editor.page).allTextContents());
    await editor.shot('render');
    // Source: the definition of the decibel, 20 lg of the ratio of amplitudes.
    const changed = 20 * Math.log10(peak(written) / peak(join(work, take)));
    check('render: the file is as the chain says', Math.abs(changed - gainDb) < 0.01, changed);
    await clearNotifications(editor);
    await editor.command('Chainwright: Measure the take');
    check('measure: shows the readings', await reportSays(editor.page, 'loudest 3 s'), await reports(editor.page).allTextContents());
    await editor.shot('measure');
    await hidePanel(editor);
  },

  async 'render of a session'(editor, check, { cases, work }) {
    const { file, takes, gainDb } = cases['render-session'];
    takes.forEach(take => tone(join(work, take), 1));
    await editor.open(file);
    await editor.command('Chainwright: Render the whole session');
    await answerDialog(editor.page, 'Render session harbour');
    const written = join(work, 'harbour-rendered.wav');
    check('render of a session: writes the file', await awaited(() => existsSync(written)), readdirSync(work));
    const said = await notification(editor.page, 'session harbour was rendered to harbour-rendered.wav').waitFor({ timeout: patience }).then(() => true, () => false);
    check('render of a session: says so', said, '');
    // Two equal tones of -6 dB each add up to 20 lg 2 - 6 dB, which is 0.02 dB, and the mix bus turns them down by 3 dB.
    const changed = 20 * Math.log10(peak(written) / peak(join(work, takes[0])));
    check('render of a session: the mix is as the file says', Math.abs(changed - gainDb) < 0.03, changed);
    await reportSays(editor.page, 'session harbour, rendered');
    await editor.shot('render-session');
    await clearNotifications(editor);
    await hidePanel(editor);
  },

  async 'render without a take'(editor, check, { cases, work }) {
    const { file, at, asked } = cases['render-asking'];
    tone(join(work, asked), 1);
    await editor.open(file, at);
    await editor.command('Chainwright: Render this chain');
    await answerDialog(editor.page, 'The recording for mast', join(work, asked));
    await answerDialog(editor.page, 'Render mast');
    const written = join(work, 'mast-rendered.wav');
    check('render: asks for the take that is not named', await awaited(() => existsSync(written)), readdirSync(work));
    await reportSays(editor.page, 'mast, rendered');
    await clearNotifications(editor);
    await hidePanel(editor);
  },

  async 'render cancelled'(editor, check, { cases, work }) {
    const { file, at, take } = cases['render-cancelled'];
    tone(join(work, take), 1200);
    await editor.open(file, at);
    await editor.command('Chainwright: Render this chain');
    await answerDialog(editor.page, 'Render keel');
    const toast = notification(editor.page, 'Rendering keel');
    const moves = await awaited(async () => /\d %/.test(await toast.innerText().catch(() => '')));
    check('render: shows how far it is', moves, await toast.innerText().catch(String));
    await editor.shot('render-progress');
    await toast.getByText('Cancel').click();
    const said = await notification(editor.page, 'Rendering keel was cancelled').waitFor({ timeout: patience }).then(() => true, () => false);
    check('render: can be cancelled', said, '');
    const left = readdirSync(work).filter(name => name.startsWith('keel-rendered'));
    check('render: cancelled, it leaves nothing', left.length === 0, left);
    await clearNotifications(editor);
  },

  async demo(editor, check, { work }) {
    await editor.command('Chainwright: Write the demo session');
    await answerDialog(editor.page, 'Where the demo session goes', `${work}/`);
    await editor.page.locator('.tab.active', { hasText: 'to-review.chain' }).waitFor({ timeout: patience });
    check('demo: is written', existsSync(join(work, 'tin-roof/answers.md')), readdirSync(work));
    check('demo: is judged', await statusSays(editor.page, 'findings'), await status(editor.page).innerText());
    const servers = () => execFileSync('pgrep', ['-f', 'chainwright.app.Main lsp'], { encoding: 'utf8' }).trim().split('\n');
    const before = servers();
    await editor.command('Chainwright: Restart the language server');
    check('restart: another server runs', await awaited(() => servers().some(one => !before.includes(one))), before);
    check('restart: the file is judged anew', await statusSays(editor.page, 'findings'), await status(editor.page).innerText());
    await clearNotifications(editor);
  },

  async snippets(editor, check, { cases }) {
    const { file, at, once, accept, 'line-after': after } = cases.snippets;
    await editor.open(file, at);
    const rows = editor.page.locator('.suggest-widget.visible .monaco-list-row .label-name');
    for (const { typed, word } of once) {
      await editor.page.keyboard.type(typed);
      await editor.page.keyboard.press('Control+Space');
      await rows.first().waitFor({ timeout: patience });
      const words = await rows.allTextContents();
      check(`snippets: ${word} is offered once`, words.filter(one => one === word).length === 1, words);
      await editor.page.keyboard.press('Escape');
      for (let i = 0; i < typed.length; i++) {
        await editor.page.keyboard.press('Backspace');
      }
    }
    await editor.page.keyboard.type(accept.slice(0, 5));
    await editor.page.keyboard.press('Control+Space');
    await rows.getByText(accept, { exact: true }).first().click({ timeout: patience });
    const written = await awaited(async () => (await editor.lines()).includes(after));
    check('snippets: the skeleton is written', written, await editor.lines());
    await editor.shot('snippets');
    await editor.page.keyboard.press('Escape');
  },

  async walkthrough(editor, check) {
    await editor.command('Welcome: Open Walkthrough...');
    await editor.quickInput('Begin with Chainwright', 'Begin with Chainwright');
    const steps = editor.page.locator('.getting-started-step:visible');
    await awaited(async () => (await steps.count()) >= 5);
    check('walkthrough: has its steps', (await steps.count()) === 5, await steps.count());
    await editor.shot('walkthrough');
    await editor.page.keyboard.press('Control+F4');
  },

  /** A package with the server inside: that one runs, on the Java that it should. */
  async package(editor, check, { cases, running }) {
    await editor.open(cases.diagnostics['clean-file']);
    check('package: its server is ready', await statusSays(editor.page, 'nothing found'), await status(editor.page).innerText());
    const home = readdirSync(running.extensions).find(name => name.startsWith('chainwright.chainwright-'));
    const inside = join(running.extensions, home, 'server');
    const servers = processes().filter(({ words }) => words.includes(join(inside, 'lib/chainwright.jar')) && words.includes('lsp'));
    check('package: the server inside runs', servers.length === 1, servers);
    const own = existsSync(join(inside, 'runtime'));
    check(`package: it runs on ${own ? 'its own' : "the system's"} Java`, servers[0]?.program.startsWith(inside) === own, servers);
  },

  /** Last, as it leaves the window with another server. */
  async server(editor, check, { cases, running, launcher, folder }) {
    const { page } = editor;
    const clean = cases.diagnostics['clean-file'];
    await reload(editor, clean, () => running.set('Machine', { 'chainwright.server.path': '/nowhere/chainwright' }));
    check('server: a wrong path is said', await notification(page, '/nowhere/chainwright').waitFor({ timeout: patience }).then(() => true, () => false), '');
    check('server: its status is stopped', await statusSays(page, 'stopped'), await status(page).innerText());
    await editor.shot('server-missing');
    await clearNotifications(editor);
    // A Java that says it is old.
    const java = join(folder, 'old-java');
    mkdirSync(join(java, 'bin'), { recursive: true });
    writeFileSync(join(java, 'bin/java'), '#!/bin/sh\necho \'openjdk version "11.0.20" 2023-07-18\' >&2\n', { mode: 0o755 });
    await reload(editor, clean, () => running.set('Machine', { 'chainwright.server.path': launcher, 'chainwright.java.home': java }));
    check('server: an old Java is said', await notification(page, 'needs Java 17 or newer').waitFor({ timeout: patience }).then(() => true, () => false), '');
    await editor.shot('server-old-java');
    await clearNotifications(editor);
    // As a package with the server inside: in the extension's own folder.
    const home = readdirSync(running.extensions).find(name => name.startsWith('chainwright.chainwright-'));
    cpSync(join(launcher, '../..'), join(running.extensions, home, 'server'), { recursive: true });
    await reload(editor, clean, () => running.set('Machine', { 'chainwright.server.path': undefined, 'chainwright.java.home': undefined }));
    check('server: the one inside is found', await statusSays(page, 'nothing found'), await status(page).innerText());
    const title = await status(page).getAttribute('aria-label').catch(String);
    check('server: says its version', /ready/.test(title ?? ''), title);
    await editor.command('Chainwright: Show the log');
    const log = await awaited(async () => plain((await reports(page).allTextContents()).join('')).includes(`${home}/server/bin/chainwright`));
    check('server: the log says where it is', log, await reports(page).allTextContents());
    await editor.shot('server-inside');
    await hidePanel(editor);
  },
};

/** The processes of this machine that can be looked at: the program, and its words. */
function processes() {
  return readdirSync('/proc')
    .filter(name => /^\d+$/.test(name))
    .flatMap(id => {
      try {
        return [{ program: readlinkSync(`/proc/${id}/exe`), words: readFileSync(`/proc/${id}/cmdline`, 'utf8').split('\0') }];
      } catch {
        return [];
      }
    });
}

/** The pictures of the extension's README, of the demo session as a person sees it. */
export async function pictures(editor, { cases, running, folder }) {
  const { page } = editor;
  await reload(editor, cases.diagnostics['clean-file'], () => running.set('User', { 'editor.inlayHints.enabled': 'on', 'editor.fontSize': 13 }));
  await hidePanel(editor);
  await editor.command('View: Close All Editors');
  await page.keyboard.press('Control+p');
  await editor.quickInput('tin-roof/to-review.chain', 'to-review.chain');
  await page.locator('.tab.active', { hasText: 'to-review.chain' }).waitFor({ timeout: patience });
  await editor.command('View: Close Primary Side Bar').catch(() => page.keyboard.press('Escape'));
  await editor.goTo(18, 6);
  await editor.command('Chainwright: Show the plot beside');
  await besideSays(page, 'high-shelf');
  mkdirSync(folder, { recursive: true });
  for (const { name, theme, shown, lightness } of themes.slice(0, 3)) {
    await wear(editor, theme, shown);
    const image = beside(page).locator('img').first();
    await awaited(async () => isWithin(lightness, await image.evaluate(paintedLightness).catch(() => NaN)));
    await page.screenshot({ path: join(folder, `${name}.png`) });
  }
}
