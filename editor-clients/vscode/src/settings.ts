import * as vscode from 'vscode';

export function setting<T>(name: string, otherwise: T): T {
  return vscode.workspace.getConfiguration('chainwright').get(name, otherwise);
}

/** What the server is run with: a Java that is named in the settings comes before the system's. */
export function environment(): NodeJS.ProcessEnv {
  const java = setting('java.home', '').trim();
  return java === '' ? process.env : { ...process.env, JAVA_HOME: java };
}

export type Ground = 'light' | 'dark' | 'contrast-light' | 'contrast-dark';

/** The ground to draw on, as the server calls it: what the setting names, or what goes with the editor's theme. */
export function ground(): Ground {
  const chosen = setting<Ground | 'editor'>('plot.theme', 'editor');
  if (chosen !== 'editor') {
    return chosen;
  }
  switch (vscode.window.activeColorTheme.kind) {
    case vscode.ColorThemeKind.Light:
      return 'light';
    case vscode.ColorThemeKind.HighContrastLight:
      return 'contrast-light';
    case vscode.ColorThemeKind.HighContrast:
      return 'contrast-dark';
    default:
      return 'dark';
  }
}
