import * as vscode from 'vscode';
import { chainEditor } from './chain-at';
import { Server } from './server';

/** The item at the lower edge: what the server is doing, and how much it has found in the file that is shown. */
export function status(server: Server): vscode.Disposable {
  const item = vscode.window.createStatusBarItem('chainwright.status', vscode.StatusBarAlignment.Right, 90);
  item.name = 'Chainwright';
  item.command = 'chainwright.showLog';
  const show = () => {
    const document = chainEditor()?.document;
    const condition = server.condition;
    item.backgroundColor = undefined;
    switch (condition.is) {
      case 'starting':
        item.text = '$(loading~spin) Chainwright';
        item.tooltip = 'Chainwright: the language server is starting. Click for its log.';
        break;
      case 'stopped':
        item.text = '$(error) Chainwright stopped';
        item.tooltip = `Chainwright: the language server has stopped. ${condition.reason} Click for its log.`;
        item.backgroundColor = new vscode.ThemeColor('statusBarItem.errorBackground');
        break;
      case 'ready': {
        const found = document ? vscode.languages.getDiagnostics(document.uri).filter(one => one.source === 'chainwright').length : 0;
        const words = found === 0 ? 'nothing found' : found === 1 ? '1 finding' : `${found} findings`;
        item.text = `$(check) Chainwright: ${words}`;
        item.tooltip = `Chainwright ${condition.version} is ready: ${words} in this file. Click for its log.`;
        break;
      }
    }
    item.accessibilityInformation = { label: item.tooltip as string, role: 'button' };
    if (document || condition.is === 'stopped') {
      item.show();
    } else {
      item.hide();
    }
  };
  show();
  return vscode.Disposable.from(
    item,
    server.onDidChange(show),
    vscode.window.onDidChangeActiveTextEditor(show),
    vscode.window.onDidChangeVisibleTextEditors(show),
    vscode.languages.onDidChangeDiagnostics(show),
  );
}
