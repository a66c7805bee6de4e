// The classes of the Vim syntax file, by a Vim that opens the files without a screen.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { linesOf } from './classes.mjs';

const here = dirname(fileURLToPath(import.meta.url));

export async function read(files, { program = 'vim', plugin = 'vim' } = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'chain-vim-'));
  try {
    // Vim takes line ends and byte order mark away when it opens a file; only what is between them is compared.
    files.forEach(({ text }, index) => writeFileSync(join(folder, `${index}.chain`), linesOf(text).join('\n')));
    execFileSync(program, ['-e', '-s', '-u', 'NONE', '-i', 'NONE', '-n', '-S', join(here, 'letters.vim'), '-c', 'qall!'], {
      env: { ...process.env, FOLDER: folder, FILES: String(files.length), PLUGIN: join(here, '../../editor-clients', plugin), LC_ALL: 'C.UTF-8' },
      stdio: ['ignore', 'ignore', 'inherit'],
      timeout: 600000,
    });
    return files.map(({ text }, index) => {
      const letters = readFileSync(join(folder, `${index}.letters`), 'utf8').split('\n');
      return text.startsWith('\ufeff') ? [`.${letters[0]}`, ...letters.slice(1)] : letters;
    });
  } finally {
    rmSync(folder, { recursive: true });
  }
}
