import { existsSync } from 'node:fs';
import { dirname, join, parse } from 'node:path';
import * as vscode from 'vscode';
import { Chain, chainAt, chainEditor, takeOf } from './chain-at';
import { Outcome, run } from './runs';
import { Server } from './server';
import { setting } from './settings';

const RECORDINGS = { Recordings: ['wav', 'aiff', 'aif', 'flac', 'ogg'] };

/** What is done to recordings: by the command line of the server's own launcher, so that editor and terminal do the same. */
export class Tasks {
  constructor(
    private readonly server: Server,
    private readonly reports: vscode.OutputChannel,
  ) {}

  /** Renders the chain at the caret into a new file, and shows what came of its level. */
  async render(): Promise<void> {
    const place = await this.place('rendered');
    if (!place) {
      return;
    }
    const { file, chain, document } = place;
    const args = ['render', file, '--chain', chain.name, '--bits', setting('render.bits', '32f')];
    const take = await takeOf(document, chain);
    if (take.is !== 'there') {
      const picked = await pickTake(chain, take.is === 'missing' ? `${take.says}: choose the recording` : `The recording for ${chain.name}`);
      if (!picked) {
        return;
      }
      args.push('--take', picked.fsPath);
    }
    await this.renderTo(chain.name, chain.name, file, args);
  }

  /** Renders all of the file at once: its chains with their takes, through sends and buses to the mix bus. */
  async renderSession(): Promise<void> {
    const editor = chainEditor();
    if (!editor) {
      void vscode.window.showErrorMessage('Chainwright: open a chain file to say what is to be rendered.');
      return;
    }
    const file = await savedFile(editor.document, 'the session', 'rendered');
    if (!file) {
      return;
    }
    const name = parse(file).name;
    await this.renderTo(`session ${name}`, name, file, ['render', file, '--bits', setting('render.bits', '32f')]);
  }

  /** Asks for the file to write, renders into it, and shows what came of the level. */
  private async renderTo(what: string, name: string, file: string, args: string[]): Promise<void> {
    const output = await vscode.window.showSaveDialog({
      defaultUri: vscode.Uri.file(join(dirname(file), `${name}-rendered.wav`)),
      filters: { 'Audio to write': ['wav', 'aiff'] },
      saveLabel: 'Render',
      title: `Render ${what}`,
    });
    if (!output) {
      return;
    }
    args.push('-o', output.fsPath);
    // The dialog has asked already.
    if (existsSync(output.fsPath)) {
      args.push('--force');
    }
    const outcome = await this.work(`Rendering ${what}`, args, dirname(file));
    if (!outcome) {
      return;
    }
    const written = vscode.workspace.asRelativePath(output);
    switch (outcome.code) {
      case undefined:
        void vscode.window.showInformationMessage(`Rendering ${what} was cancelled; nothing was written.`);
        break;
      case 0:
        this.report(`${what}, rendered`, outcome);
        void vscode.window.showInformationMessage(`${what} was rendered to ${written}. Begin to listen at a low level.`);
        break;
      case 1:
        this.report(`${what}, rendered`, outcome);
        void vscode.window.showWarningMessage(`${what} was rendered to ${written}, but not as asked: its level was held, or it clips. The report says why.`);
        break;
      default:
        this.refuse(`${what} was not rendered`, outcome);
    }
  }

  /** Measures the take of the chain at the caret. */
  async measure(): Promise<void> {
    const place = await this.place('measured');
    if (!place) {
      return;
    }
    const take = await takeOf(place.document, place.chain);
    const file = take.is === 'there' ? take.file : await pickTake(place.chain, 'The recording to measure');
    if (!file) {
      return;
    }
    const outcome = await this.work(`Measuring ${vscode.workspace.asRelativePath(file)}`, ['measure', file.fsPath], dirname(place.file));
    if (outcome?.code === 0) {
      this.report(`${place.chain.name}, its take measured`, outcome);
    } else if (outcome?.code !== undefined) {
      this.refuse('The take was not measured', outcome);
    }
  }

  /** Writes the session to try things on into a folder of the user's, and opens its first file. */
  async demo(): Promise<void> {
    const picked = await vscode.window.showOpenDialog({
      canSelectFiles: false,
      canSelectFolders: true,
      openLabel: 'Write It Here',
      title: 'Where the demo session goes',
      defaultUri: vscode.workspace.workspaceFolders?.[0]?.uri,
    });
    const parent = picked?.[0]?.fsPath;
    if (!parent) {
      return;
    }
    let folder = join(parent, 'tin-roof');
    for (let number = 2; existsSync(folder); number++) {
      folder = join(parent, `tin-roof-${number}`);
    }
    const outcome = await this.work('Writing the demo session', ['demo', folder], parent);
    if (outcome?.code === 0) {
      await vscode.window.showTextDocument(vscode.Uri.file(join(folder, 'to-review.chain')));
    } else if (outcome?.code !== undefined) {
      this.refuse('The demo session was not written', outcome);
    }
  }

  /** The saved file and the chain that a command is about. */
  private async place(done: string): Promise<{ document: vscode.TextDocument; file: string; chain: Chain } | undefined> {
    const editor = chainEditor();
    if (!editor) {
      void vscode.window.showErrorMessage(`Chainwright: open a chain file to say what is to be ${done}.`);
      return undefined;
    }
    const { document } = editor;
    const chain = await chainAt(editor);
    if (!chain) {
      return undefined;
    }
    const file = await savedFile(document, chain.name, done);
    return file === undefined ? undefined : { document, file, chain };
  }

  private async work(title: string, args: string[], folder: string): Promise<Outcome | undefined> {
    const launcher = this.server.launcher();
    if (!launcher) {
      void vscode.window.showErrorMessage('Chainwright: there is no server to do this; see the log.', 'Show Log').then(chosen => {
        if (chosen) {
          void vscode.commands.executeCommand('chainwright.showLog');
        }
      });
      return undefined;
    }
    try {
      return await vscode.window.withProgress(
        { location: vscode.ProgressLocation.Notification, title, cancellable: true },
        (progress, token) => {
          let shown = 0;
          return run(
            launcher,
            args,
            folder,
            (step, percent) => {
              // A second pass begins at 0 again; the bar cannot go back and waits.
              const increment = Math.max(0, percent - shown);
              shown = Math.max(shown, percent);
              progress.report({ message: step === 'rendering' ? `${percent} %` : `${step}, ${percent} %`, increment });
            },
            stop => token.onCancellationRequested(stop),
          );
        },
      );
    } catch (trouble) {
      void vscode.window.showErrorMessage(`Chainwright: ${launcher} could not be run: ${trouble}`);
      return undefined;
    }
  }

  private report(title: string, outcome: Outcome): void {
    const lines = [`── ${title} ──`, outcome.says.trimEnd(), ...outcome.complains, ''];
    this.reports.appendLine(lines.filter((line, index) => line !== '' || index === lines.length - 1).join('\n'));
    this.reports.show(true);
  }

  private refuse(title: string, outcome: Outcome): void {
    const why = outcome.complains.map(line => line.replace(/^chainwright: /, '')).join(' ');
    void vscode.window.showErrorMessage(`${title}: ${why === '' ? `exit code ${outcome.code}` : why}`);
  }
}

/** The path of the file, saved: the command line reads that, not the editor. */
async function savedFile(document: vscode.TextDocument, what: string, done: string): Promise<string | undefined> {
  const isSaved = document.isUntitled || document.isDirty ? await document.save() : true;
  if (!isSaved || document.uri.scheme !== 'file') {
    void vscode.window.showErrorMessage(`Chainwright: save the file first; ${what} is ${done} as it is saved.`);
    return undefined;
  }
  return document.uri.fsPath;
}

async function pickTake(chain: Chain, title: string): Promise<vscode.Uri | undefined> {
  const picked = await vscode.window.showOpenDialog({ filters: RECORDINGS, openLabel: `Use for ${chain.name}`, title });
  return picked?.[0];
}
