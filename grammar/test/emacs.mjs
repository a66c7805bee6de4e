// The classes of chain-mode, by an Emacs that opens the files without a screen.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { linesOf } from './classes.mjs';

const here = dirname(fileURLToPath(import.meta.url));

export async function read(files) {
  const folder = mkdtempSync(join(tmpdir(), 'chain-emacs-'));
  try {
    files.forEach(({ text }, index) => writeFileSync(join(folder, `${index}.chain`), linesOf(text).join('\n')));
    execFileSync('emacs', ['-batch', '-Q', '-l', join(here, 'letters.el')], {
      env: { ...process.env, FOLDER: folder, FILES: String(files.length), MODE: join(here, '../../editor-clients/emacs'), LC_ALL: 'C.UTF-8' },
      stdio: ['ignore', 'ignore', 'inherit'],
      timeout: 600000,
    });
    return files.map((_, index) => readFileSync(join(folder, `${index}.letters`), 'utf8').split('\n'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
