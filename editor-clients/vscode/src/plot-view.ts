import * as vscode from 'vscode';
import { chainEditor } from './chain-at';
import { Plots, Server } from './server';

/** How long the caret rests before its line is drawn [ms]: holding an arrow key down draws no line on the way. */
const REST_MS = 60;

const KIND = 'chainwright.plot';

/** The view beside the text that draws the line at the caret and its chain. There is one at most. */
export class PlotView implements vscode.Disposable {
  private panel: vscode.WebviewPanel | undefined;
  private followed: { document: vscode.TextDocument; position: vscode.Position } | undefined;
  private timer: NodeJS.Timeout | undefined;
  private asking: vscode.CancellationTokenSource | undefined;
  private readonly disposables: vscode.Disposable[];

  constructor(
    private readonly server: Server,
    private readonly folder: vscode.Uri,
  ) {
    this.disposables = [
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.follow(textEditor)),
      vscode.window.onDidChangeActiveTextEditor(editor => this.follow(editor)),
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        if (document === this.followed?.document) {
          this.follow(vscode.window.visibleTextEditors.find(editor => editor.document === document));
        }
      }),
      server.onDidChange(() => this.drawSoon()),
      vscode.window.registerWebviewPanelSerializer(KIND, {
        deserializeWebviewPanel: async panel => this.adopt(panel),
      }),
    ];
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.asking?.cancel();
    this.panel?.dispose();
    this.disposables.forEach(one => one.dispose());
  }

  show(): void {
    const editor = chainEditor();
    if (this.panel) {
      this.panel.reveal(undefined, true);
    } else {
      this.adopt(
        vscode.window.createWebviewPanel(KIND, 'Plot', { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }, { enableScripts: true }),
      );
    }
    this.follow(editor);
  }

  /** Draws anew, for another theme. */
  drawSoon(): void {
    if (this.panel?.visible) {
      clearTimeout(this.timer);
      this.timer = setTimeout(() => void this.draw(), REST_MS);
    }
  }

  private adopt(panel: vscode.WebviewPanel): void {
    this.panel?.dispose();
    this.panel = panel;
    panel.iconPath = {
      light: vscode.Uri.joinPath(this.folder, 'images', 'curve-light.svg'),
      dark: vscode.Uri.joinPath(this.folder, 'images', 'curve-dark.svg'),
    };
    const view = vscode.Uri.joinPath(this.folder, 'view');
    panel.webview.options = { enableScripts: true, localResourceRoots: [view] };
    panel.onDidDispose(() => {
      if (this.panel === panel) {
        this.panel = undefined;
      }
    });
    panel.onDidChangeViewState(() => this.drawSoon());
    // The page says when it can be drawn on.
    panel.webview.onDidReceiveMessage(() => this.follow(chainEditor()));
    panel.webview.html = page(panel.webview, view);
  }

  private follow(editor: vscode.TextEditor | undefined): void {
    if (editor?.document.languageId === 'chain') {
      this.followed = { document: editor.document, position: editor.selection.active };
    }
    this.drawSoon();
  }

  private async draw(): Promise<void> {
    this.asking?.cancel();
    const asking = new vscode.CancellationTokenSource();
    this.asking = asking;
    try {
      const plots = this.followed && (await this.server.plots(this.followed.document, this.followed.position, asking.token));
      if (!asking.token.isCancellationRequested) {
        await this.put(plots);
      }
    } catch {
      // The text was edited meanwhile, which draws anew, or the server ended, which is said elsewhere.
    } finally {
      asking.dispose();
    }
  }

  private async put(plots: Plots | undefined): Promise<void> {
    if (!this.panel) {
      return;
    }
    this.panel.title = plots ? `Plot: ${plots.name}` : 'Plot';
    const isReady = this.server.condition.is === 'ready';
    await this.panel.webview.postMessage(
      plots ?? { says: isReady ? 'Put the caret into a chain, a bus or a preset to see what it does.' : 'The language server does not run; the log says why.' },
    );
  }
}

function page(webview: vscode.Webview, view: vscode.Uri): string {
  const at = (name: string) => webview.asWebviewUri(vscode.Uri.joinPath(view, name));
  const policy = `default-src 'none'; img-src data:; style-src ${webview.cspSource}; script-src ${webview.cspSource}`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${at('plot.css')}">
<title>Plot</title>
</head>
<body>
<main></main>
<script src="${at('plot.js')}"></script>
</body>
</html>`;
}
