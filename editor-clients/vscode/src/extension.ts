import * as vscode from 'vscode';
import { PlotView } from './plot-view';
import { Server } from './server';
import { status } from './status';
import { Tasks } from './tasks';

let server: Server | undefined;

export function activate(context: vscode.ExtensionContext): Promise<void> {
  const log = vscode.window.createOutputChannel('Chainwright', { log: true });
  const reports = vscode.window.createOutputChannel('Chainwright Reports', 'chainwright-report');
  const running = new Server(context.extensionPath, log);
  server = running;
  const view = new PlotView(running, context.extensionUri);
  const tasks = new Tasks(running, reports);
  const redraw = () => {
    void running.tellSettings();
    view.drawSoon();
  };
  context.subscriptions.push(
    log,
    reports,
    running,
    view,
    status(running),
    vscode.commands.registerCommand('chainwright.showPlot', () => view.show()),
    vscode.commands.registerCommand('chainwright.render', () => tasks.render()),
    vscode.commands.registerCommand('chainwright.renderSession', () => tasks.renderSession()),
    vscode.commands.registerCommand('chainwright.measure', () => tasks.measure()),
    vscode.commands.registerCommand('chainwright.demo', () => tasks.demo()),
    vscode.commands.registerCommand('chainwright.restart', () => running.restart()),
    vscode.commands.registerCommand('chainwright.showLog', () => log.show()),
    vscode.window.onDidChangeActiveColorTheme(redraw),
    vscode.workspace.onDidChangeConfiguration(change => {
      if (change.affectsConfiguration('chainwright.server.path') || change.affectsConfiguration('chainwright.java.home')) {
        void running.restart();
      } else if (change.affectsConfiguration('chainwright.plot.theme')) {
        redraw();
      }
    }),
    vscode.workspace.onDidGrantWorkspaceTrust(() => running.restart()),
  );
  return running.restart();
}

export async function deactivate(): Promise<void> {
  await server?.stop();
}
