// The classes of the Kate syntax definition, by the highlighter of Kate's own framework.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { linesOf } from './classes.mjs';

const letterOf = { Statement: 'S', Setting: 's', Name: 'N', Number: 'n', Unit: 'u', Text: 't', Note: 'o', Comment: 'c', Operator: 'p', Punctuation: 'p' };

/** A theme with a colour for each kind of item, so that its page says which is which. */
function theme() {
  const colours = Object.keys(letterOf).map((item, index) => [item, { 'text-color': `#0000${(index + 1).toString(16).padStart(2, '0')}` }]);
  const plain = Object.fromEntries(
    'Normal Keyword Function Variable ControlFlow Operator BuiltIn Extension Preprocessor Attribute Char SpecialChar String VerbatimString SpecialString Import DataType DecVal BaseN Float Constant Comment Documentation Annotation CommentVar RegionMarker Information Warning Alert Others Error'
      .split(' ')
      .map(style => [style, { 'text-color': '#ffffff' }]),
  );
  return { metadata: { name: 'Letters', revision: 1 }, 'text-styles': plain, 'editor-colors': {}, 'custom-styles': { Chain: Object.fromEntries(colours) } };
}

function unescaped(html) {
  return html.replace(/&(lt|gt|quot|amp|#39);/g, (_, name) => ({ lt: '<', gt: '>', quot: '"', amp: '&', '#39': "'" })[name]);
}

/** The letters of a line of the page: runs of text, each in an element with its colour or in none. */
function lettersOf(html) {
  let letters = '';
  let letter = '.';
  for (const [, tag, text] of html.matchAll(/<([^>]*)>|([^<]+)/g)) {
    if (tag !== undefined) {
      const colour = /color:#0000([0-9a-f]{2})/.exec(tag);
      letter = colour ? Object.values(letterOf)[parseInt(colour[1], 16) - 1] : '.';
    } else {
      letters += letter.repeat(Array.from(unescaped(text)).length);
    }
  }
  return letters;
}

export async function read(files) {
  const folder = mkdtempSync(join(tmpdir(), 'chain-kate-'));
  try {
    const own = join(folder, 'org.kde.syntax-highlighting');
    mkdirSync(join(own, 'syntax'), { recursive: true });
    mkdirSync(join(own, 'themes'));
    cpSync(fileURLToPath(new URL('../chain.xml', import.meta.url)), join(own, 'syntax/chain.xml'));
    writeFileSync(join(own, 'themes/letters.theme'), JSON.stringify(theme()));
    // One run for all: behind a blank line no statement goes on, so a file reads as it does alone.
    const lines = files.flatMap(({ text }) => [...linesOf(text), '']);
    writeFileSync(join(folder, 'all.chain'), lines.join('\n'));
    const { stdout, stderr, status } = spawnSync('kate-syntax-highlighter', ['-s', 'Chain', '-t', 'Letters', join(folder, 'all.chain')], {
      env: { ...process.env, XDG_DATA_HOME: folder, LC_ALL: 'C.UTF-8', QT_QPA_PLATFORM: 'offscreen' },
      encoding: 'utf8',
      maxBuffer: 1 << 28,
    });
    // What it has against a definition it says here.
    if (status !== 0 || stderr !== '') {
      throw new Error(stderr);
    }
    const page = stdout.slice(stdout.indexOf('<pre'), stdout.lastIndexOf('</pre>')).replace(/^<pre[^>]*>\n?/, '').split('\n');
    let at = 0;
    return files.map(({ text }) => {
      const { length } = linesOf(text);
      at += length + 1;
      return page.slice(at - length - 1, at - 1).map(lettersOf);
    });
  } finally {
    rmSync(folder, { recursive: true });
  }
}
