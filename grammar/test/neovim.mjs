// The classes of the same syntax file in Neovim.
import { read as readVim } from './vim.mjs';

export function read(files) {
  return readVim(files, { program: 'nvim', plugin: 'neovim' });
}
