import { ChildProcess, spawn } from 'node:child_process';
import * as vscode from 'vscode';
import {
  CloseAction,
  ConfigurationParams,
  ErrorAction,
  ExecuteCommandRequest,
  LanguageClient,
  LanguageClientOptions,
  State,
} from 'vscode-languageclient/node';
import { locate } from './locate';
import { environment, ground, setting } from './settings';

/** What the server is doing. */
export type Condition =
  | { is: 'starting' }
  | { is: 'ready'; launcher: string; version: string }
  | { is: 'stopped'; reason: string };

/** A server that ends by itself is started again, but not for ever. */
const MOST_RESTARTS = 3;
const RESTARTS_WITHIN_MS = 180_000;

/** The last lines of what the server complains of say why it ended. */
const KEPT_LINES = 5;

/** How long is waited for them where the process does not end [ms]. */
const LAST_WORDS_MS = 2_000;

/** A client that leaves telling the user to `Server`, which tells once and says what to do. */
class QuietClient extends LanguageClient {
  override error(message: string, data?: unknown): void {
    super.error(message, data, false);
  }
}

/** The one language server of this window. */
export class Server implements vscode.Disposable {
  private client: LanguageClient | undefined;
  private now: Condition = { is: 'stopped', reason: 'It has not been started yet.' };
  private readonly changes = new vscode.EventEmitter<Condition>();
  readonly onDidChange = this.changes.event;
  /** Starts and stops follow one another here, so that two changes of a setting never leave two servers. */
  private queue: Promise<void> = Promise.resolve();
  private restarts: number[] = [];
  /** Comes when the process and its streams have ended, so that all it said has been read. */
  private childClosed: Promise<void> = Promise.resolve();
  /** Whether `begin` waits for a first answer, and will say what went wrong. */
  private isBeginning = false;

  constructor(
    private readonly extensionFolder: string,
    private readonly log: vscode.LogOutputChannel,
  ) {}

  get condition(): Condition {
    return this.now;
  }

  restart(): Promise<void> {
    return this.inTurn(async () => {
      await this.end();
      this.restarts = [];
      await this.begin();
    });
  }

  stop(): Promise<void> {
    return this.inTurn(() => this.end());
  }

  dispose(): void {
    this.changes.dispose();
  }

  /** Lets the server read the settings again. */
  async tellSettings(): Promise<void> {
    if (this.now.is === 'ready') {
      await this.client?.sendNotification('workspace/didChangeConfiguration', { settings: null });
    }
  }

  /** The launcher that runs, or that would run. */
  launcher(): string | undefined {
    const place = locate(setting('server.path', ''), this.extensionFolder);
    return 'launcher' in place ? place.launcher : undefined;
  }

  /** The plots of a place; undefined where there is nothing to draw or while no server runs. */
  async plots(document: vscode.TextDocument, position: vscode.Position, token: vscode.CancellationToken): Promise<Plots | undefined> {
    if (this.now.is !== 'ready' || !this.client) {
      return undefined;
    }
    const client = this.client;
    const argument = {
      textDocument: client.code2ProtocolConverter.asTextDocumentIdentifier(document),
      position: client.code2ProtocolConverter.asPosition(position),
      theme: ground(),
    };
    const answer: unknown = await client.sendRequest(
      ExecuteCommandRequest.type,
      { command: 'chainwright.plot', arguments: [argument] },
      token,
    );
    return (answer as Plots | null) ?? undefined;
  }

  private inTurn(step: () => Promise<void>): Promise<void> {
    this.queue = this.queue.then(step, step);
    return this.queue;
  }

  private async begin(): Promise<void> {
    const place = locate(setting('server.path', ''), this.extensionFolder);
    if ('trouble' in place) {
      this.tell({ is: 'stopped', reason: place.trouble });
      void this.complain(place.trouble, 'chainwright.server.path');
      return;
    }
    this.tell({ is: 'starting' });
    const { launcher } = place;
    this.log.info(`Starting ${launcher} lsp`);
    const complaints: string[] = [];
    const client = new QuietClient('chainwright', 'Chainwright', async () => this.run(launcher, complaints), this.options(complaints));
    this.client = client;
    client.onDidChangeState(({ newState }) => {
      if (client !== this.client) {
        return;
      }
      if (newState === State.Running) {
        this.tell({ is: 'ready', launcher, version: client.initializeResult?.serverInfo?.version ?? '' });
      } else if (newState === State.Starting) {
        this.tell({ is: 'starting' });
      }
    });
    this.isBeginning = true;
    try {
      await client.start();
      // It also returns when the server has ended before its first answer.
      if (!client.isRunning()) {
        throw new Error('It ended before it answered.');
      }
    } catch (trouble) {
      this.client = undefined;
      await Promise.race([this.childClosed, new Promise(done => setTimeout(done, LAST_WORDS_MS))]);
      const reason = complaints.length > 0 ? complaints.join('\n').replace(/^chainwright: /, 'Chainwright ') : String(trouble);
      this.tell({ is: 'stopped', reason });
      void this.complain(`The server at ${launcher} did not start. ${reason}`, /Java/.test(reason) ? 'chainwright.java.home' : 'chainwright.server.path');
    } finally {
      this.isBeginning = false;
    }
  }

  private async end(): Promise<void> {
    const ending = this.client;
    this.client = undefined;
    // A client whose server has already ended refuses to stop, and there is nothing left to stop.
    await ending?.stop().catch(() => undefined);
    await ending?.dispose().catch(() => undefined);
    if (ending) {
      this.tell({ is: 'stopped', reason: 'It was stopped.' });
    }
  }

  private run(launcher: string, complaints: string[]): ChildProcess {
    const child = spawn(launcher, ['lsp'], { env: environment(), cwd: this.extensionFolder });
    this.childClosed = new Promise(done => child.once('close', () => done()).once('error', () => done()));
    child.on('error', trouble => complaints.push(trouble.message));
    child.stderr.on('data', (piece: Buffer) => {
      complaints.push(...piece.toString().split('\n').filter(line => line.trim() !== ''));
      complaints.splice(0, complaints.length - KEPT_LINES);
    });
    return child;
  }

  private options(complaints: string[]): LanguageClientOptions {
    return {
      documentSelector: [
        { scheme: 'file', language: 'chain' },
        { scheme: 'untitled', language: 'chain' },
      ],
      outputChannel: this.log,
      initializationOptions: { plots: 'svg', plotTheme: ground() },
      // What went wrong is said once, by `begin`.
      initializationFailedHandler: () => false,
      errorHandler: {
        error: () => ({ action: ErrorAction.Continue, handled: true }),
        closed: () => this.closed(complaints),
      },
      middleware: {
        workspace: {
          // The ground of plots follows the editor's theme, which the server cannot know.
          configuration: async (params: ConfigurationParams, token, next) => {
            const answers = await next(params, token);
            return Array.isArray(answers)
              ? answers.map((answer, index) =>
                  params.items[index]?.section === 'chainwright' ? { ...answer, plots: 'svg', plotTheme: ground() } : answer,
                )
              : answers;
          },
        },
      },
    };
  }

  /** The server has ended although nobody asked it to. */
  private closed(complaints: string[]): { action: CloseAction; handled: boolean } {
    if (!this.isBeginning) {
      const time = Date.now();
      this.restarts = this.restarts.filter(before => time - before < RESTARTS_WITHIN_MS);
      if (this.restarts.length < MOST_RESTARTS) {
        this.restarts.push(time);
        this.log.warn('The server has ended; it is started again.');
        return { action: CloseAction.Restart, handled: true };
      }
      const last = complaints.length > 0 ? ` It said last: ${complaints.join(' ')}` : '';
      const reason = `The server ended ${MOST_RESTARTS + 1} times within three minutes.${last}`;
      this.tell({ is: 'stopped', reason });
      void this.complain(reason, 'chainwright.server.path');
    }
    return { action: CloseAction.DoNotRestart, handled: true };
  }

  private tell(condition: Condition): void {
    this.now = condition;
    if (condition.is === 'stopped') {
      this.log.info(`Stopped: ${condition.reason}`);
    }
    this.changes.fire(condition);
  }

  private async complain(reason: string, remedy: string): Promise<void> {
    const chosen = await vscode.window.showErrorMessage(`Chainwright: ${reason}`, 'Open Settings', 'Show Log');
    if (chosen === 'Open Settings') {
      await vscode.commands.executeCommand('workbench.action.openSettings', remedy);
    } else if (chosen === 'Show Log') {
      this.log.show();
    }
  }
}

/** What the server draws beside a place. */
export interface Plots {
  /** The chain, bus or preset. */
  name: string;
  /** The line at the place, if it can be drawn, then the whole. */
  parts: { says: string; plots: { says: string; svg: string }[] }[];
}
