// code-server with the extension installed, in a folder of its own: Visual Studio Code for a browser.
import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { awaited } from './patience.mjs';

function freePort() {
  return new Promise((done, fail) => {
    const probe = createServer().once('error', fail).listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => done(port));
    });
  });
}

// The settings of a user who wants quiet: nothing may cover or shift what the driver reads.
const quiet = {
  'workbench.startupEditor': 'none',
  'workbench.colorTheme': 'Default Light Modern',
  'editor.minimap.enabled': false,
  'editor.stickyScroll.enabled': false,
  'editor.wordBasedSuggestions': 'off',
  'editor.inlayHints.enabled': 'offUnlessPressed',
  'editor.codeLens': false,
  'window.commandCenter': false,
  'extensions.ignoreRecommendations': true,
  'telemetry.telemetryLevel': 'off',
};

/**
 * Starts the code-server whose entry script is `entry`, with everything of its own below `folder`; without a `launcher` the
 * extension looks for one itself, and with `isWithoutJava` it finds no Java.
 * Returns its address; `stop`, which ends it with all its children; `set`, which changes settings of the `User` or the
 * `Machine` (undefined takes one back); and the folder that its extensions lie in.
 */
export async function startCodeServer({ entry, extension, launcher, folder, isWithoutJava = false }) {
  const home = join(folder, 'home');
  const data = join(folder, 'data');
  const config = join(folder, 'config.yaml');
  mkdirSync(home, { recursive: true });
  const settings = { User: {}, Machine: {} };
  const set = (owner, changes) => {
    mkdirSync(join(data, owner), { recursive: true });
    Object.assign(settings[owner], changes);
    writeFileSync(join(data, owner, 'settings.json'), JSON.stringify(settings[owner]));
  };
  set('User', quiet);
  // A path belongs to the machine: a browser's window drops it from the user's settings when these change.
  if (launcher) {
    set('Machine', { 'chainwright.server.path': launcher });
  }
  writeFileSync(config, '');
  // The user's own code-server and its sockets are left alone.
  const env = { ...process.env, HOME: home, XDG_CONFIG_HOME: home, XDG_DATA_HOME: home, XDG_CACHE_HOME: join(home, '.cache') };
  if (isWithoutJava) {
    delete env.JAVA_HOME;
    env.PATH = withoutJava(join(folder, 'programs'));
  }
  const extensions = join(folder, 'extensions');
  const common = [entry, '--config', config, '--user-data-dir', data, '--extensions-dir', extensions];
  execFileSync(process.execPath, [...common, '--install-extension', extension], { env, stdio: 'pipe', timeout: 60000 });
  const port = await freePort();
  const options = ['--auth', 'none', '--disable-telemetry', '--disable-update-check', '--disable-workspace-trust'];
  const server = spawn(process.execPath, [...common, ...options, '--bind-addr', `127.0.0.1:${port}`], {
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
    // A group of its own, so that the editor's hosts and the language server end with it.
    detached: true,
  });
  let log = '';
  for (const stream of [server.stdout, server.stderr]) {
    stream.on('data', piece => (log += piece));
  }
  const stop = async () => {
    signal(server.pid, 'SIGTERM');
    await new Promise(done => setTimeout(done, 1000));
    signal(server.pid, 'SIGKILL');
  };
  if (!(await awaited(() => /HTTP server listening/.test(log)))) {
    await stop();
    throw new Error(`code-server does not listen: ${log}`);
  }
  return { url: `http://127.0.0.1:${port}`, stop, set, extensions };
}

/** A folder with links to the system's programs, Java's left out. */
function withoutJava(folder) {
  mkdirSync(folder);
  for (const program of readdirSync('/usr/bin').filter(name => !/^(java|j[a-z]+d$)/.test(name))) {
    symlinkSync(join('/usr/bin', program), join(folder, program));
  }
  return folder;
}

function signal(group, name) {
  try {
    process.kill(-group, name);
  } catch (trouble) {
    if (trouble.code !== 'ESRCH') {
      throw trouble;
    }
  }
}
