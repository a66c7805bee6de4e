import { accessSync, constants, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';

/** Where the server's launcher lies, or why there is none and what to do. */
export type Located = { launcher: string } | { trouble: string };

/**
 * Finds the launcher: what the user has set, else the one inside the extension, else `chainwright` on the PATH. A set path
 * comes first, so that a package with a server inside can still be told to use another.
 */
export function locate(chosen: string, extensionFolder: string, path = process.env.PATH ?? ''): Located {
  if (chosen.trim() !== '') {
    return locateChosen(chosen.trim(), path);
  }
  const packed = join(extensionFolder, 'server', 'bin', 'chainwright');
  if (isProgram(packed)) {
    return { launcher: packed };
  }
  const found = onPath('chainwright', path);
  return found
    ? { launcher: found }
    : {
        trouble:
          'No Chainwright server was found: there is none inside this extension and no `chainwright` on the PATH. ' +
          'Set `chainwright.server.path` to the launcher, which is `bin/chainwright` in Chainwright\'s folder.',
      };
}

function locateChosen(chosen: string, path: string): Located {
  if (!chosen.includes('/')) {
    const found = onPath(chosen, path);
    return found
      ? { launcher: found }
      : { trouble: `\`chainwright.server.path\` is \`${chosen}\`, but there is no such program on the PATH. Give its whole path.` };
  }
  const launcher = chosen.replace(/^~(?=\/)/, homedir());
  return isProgram(launcher)
    ? { launcher }
    : {
        trouble:
          `\`chainwright.server.path\` is \`${chosen}\`, but there is no program that can be run. ` +
          'Name the launcher, which is `bin/chainwright` in Chainwright\'s folder.',
      };
}

function onPath(name: string, path: string): string | undefined {
  return path
    .split(delimiter)
    .filter(folder => folder !== '')
    .map(folder => join(folder, name))
    .find(isProgram);
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
