import * as vscode from 'vscode';
import { LanguageClient, LanguageClientOptions, ServerOptions } from 'vscode-languageclient/node';

/** The one client of this window; absent while none runs. */
let client: LanguageClient | undefined;

/** Starts and stops follow one another here, so that two changes of a setting never leave two servers. */
let queue: Promise<void> = Promise.resolve();

export function activate(context: vscode.ExtensionContext): Promise<void> {
  const output = vscode.window.createOutputChannel('Chainwright', { log: true });
  const restart = () => inTurn(() => stop().then(() => start(output)));
  let theme = plotTheme();
  // The server learns the ground of its plots when it starts.
  const restartForTheme = () => {
    if (plotTheme() !== theme) {
      theme = plotTheme();
      restart();
    }
  };
  context.subscriptions.push(
    output,
    vscode.commands.registerCommand('chainwright.restart', restart),
    vscode.window.onDidChangeActiveColorTheme(restartForTheme),
    vscode.workspace.onDidChangeConfiguration(change => {
      if (change.affectsConfiguration('chainwright.server.path')) {
        restart();
      } else if (change.affectsConfiguration('chainwright.plot.theme')) {
        restartForTheme();
      }
    }),
    vscode.workspace.onDidGrantWorkspaceTrust(restart),
  );
  return inTurn(() => start(output));
}

export function deactivate(): Promise<void> {
  return inTurn(stop);
}

function inTurn(step: () => Promise<void>): Promise<void> {
  queue = queue.then(step, step);
  return queue;
}

async function start(output: vscode.LogOutputChannel): Promise<void> {
  const path = vscode.workspace.getConfiguration('chainwright').get('server.path', 'chainwright');
  const server: ServerOptions = { command: path, args: ['lsp'] };
  const options: LanguageClientOptions = {
    documentSelector: [
      { scheme: 'file', language: 'chain' },
      { scheme: 'untitled', language: 'chain' },
    ],
    outputChannel: output,
    initializationOptions: { plots: 'svg', plotTheme: plotTheme() },
  };
  client = new LanguageClient('chainwright', 'Chainwright', server, options);
  try {
    await client.start();
  } catch (trouble) {
    client = undefined;
    output.error(`The server at "${path}" did not start: ${trouble}`);
    void offerSettings(path);
  }
}

async function stop(): Promise<void> {
  const stopping = client;
  client = undefined;
  // A client whose server has already ended refuses to stop, and there is nothing left to stop.
  await stopping?.stop().catch(() => undefined);
}

async function offerSettings(path: string): Promise<void> {
  const open = 'Open Settings';
  const chosen = await vscode.window.showErrorMessage(
    `Chainwright's language server could not be started as "${path} lsp".`,
    open,
  );
  if (chosen === open) {
    await vscode.commands.executeCommand('workbench.action.openSettings', 'chainwright.server.path');
  }
}

/** The ground to draw on: what the setting names, or what goes with the editor's theme. */
function plotTheme(): 'light' | 'dark' {
  const chosen = vscode.workspace.getConfiguration('chainwright').get<string>('plot.theme', 'editor');
  if (chosen === 'light' || chosen === 'dark') {
    return chosen;
  }
  const kind = vscode.window.activeColorTheme.kind;
  return kind === vscode.ColorThemeKind.Dark || kind === vscode.ColorThemeKind.HighContrast ? 'dark' : 'light';
}
