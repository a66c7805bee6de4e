import * as vscode from 'vscode';

/** A chain or bus of a file. */
export interface Chain {
  name: string;
  range: vscode.Range;
}

/** The recording that a chain names. */
export type Take = { is: 'there'; file: vscode.Uri } | { is: 'missing'; says: string } | { is: 'none' };

/** The editor with a chain file that commands are about: the one that is worked in, else one that is seen. */
export function chainEditor(): vscode.TextEditor | undefined {
  const isChain = (editor: vscode.TextEditor | undefined) => editor?.document.languageId === 'chain';
  const active = vscode.window.activeTextEditor;
  return isChain(active) ? active : vscode.window.visibleTextEditors.find(isChain);
}

/** The chain around the caret; where there is none, the file's only one or the one that the user picks. */
export async function chainAt(editor: vscode.TextEditor): Promise<Chain | undefined> {
  const chains = await chainsOf(editor.document);
  const around = chains.find(chain => chain.range.contains(editor.selection.active));
  if (around || chains.length === 1) {
    return around ?? chains[0];
  }
  if (chains.length === 0) {
    void vscode.window.showErrorMessage('Chainwright: this file holds no chain and no bus.');
    return undefined;
  }
  const picked = await vscode.window.showQuickPick(
    chains.map(chain => ({ label: chain.name, chain })),
    { title: 'Which chain?' },
  );
  return picked?.chain;
}

async function chainsOf(document: vscode.TextDocument): Promise<Chain[]> {
  const symbols = await vscode.commands.executeCommand<vscode.DocumentSymbol[] | undefined>(
    'vscode.executeDocumentSymbolProvider',
    document.uri,
  );
  return (symbols ?? []).flatMap(symbol => {
    const name = /^(?:chain|bus) (\S+)$/.exec(symbol.name)?.[1];
    return name ? [{ name, range: symbol.range }] : [];
  });
}

export async function takeOf(document: vscode.TextDocument, chain: Chain): Promise<Take> {
  const links = await vscode.commands.executeCommand<vscode.DocumentLink[] | undefined>('vscode.executeLinkProvider', document.uri);
  // Imports stand outside of chains: a file that a chain names is its take.
  const take = links?.find(link => chain.range.contains(link.range));
  if (!take) {
    return { is: 'none' };
  }
  return take.target ? { is: 'there', file: take.target } : { is: 'missing', says: take.tooltip ?? '' };
}
