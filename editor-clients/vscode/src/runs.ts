import { spawn } from 'node:child_process';
import { environment } from './settings';

/** What a run of the command line came to. */
export interface Outcome {
  /** The exit code; undefined where it was cancelled. */
  code: number | undefined;
  /** Standard output. */
  says: string;
  /** What it complains of, without the lines that show progress. */
  complains: string[];
}

/** A line such as "rendering             ####...... 37 %". */
const PROGRESS = /^(.*?)\s+#*\.*\s+(\d{1,3}) %$/;

/**
 * Runs the launcher. `progress` gets what is being done and how far it is [%]; `cancelled` calls back when the run is no longer
 * wanted, which ends it in a way that lets it clear up.
 */
export function run(
  launcher: string,
  args: string[],
  folder: string,
  progress: (step: string, percent: number) => void,
  cancelled: (stop: () => void) => void,
): Promise<Outcome> {
  return new Promise((done, fail) => {
    // The launcher shows progress where it is told that standard error is watched as a terminal is.
    const child = spawn(launcher, args, { cwd: folder, env: { ...environment(), CHAINWRIGHT_STDERR: 'terminal', NO_COLOR: '1', COLUMNS: '80' } });
    let says = '';
    let rest = '';
    let isStopped = false;
    const complains: string[] = [];
    const line = (text: string) => {
      const shown = PROGRESS.exec(text.trim());
      if (shown) {
        progress(shown[1] ?? '', Number(shown[2]));
      } else if (text.trim() !== '') {
        complains.push(text.trim());
      }
    };
    cancelled(() => {
      isStopped = true;
      child.kill('SIGTERM');
    });
    child.stdout.setEncoding('utf8').on('data', (piece: string) => (says += piece));
    child.stderr.setEncoding('utf8').on('data', (piece: string) => {
      // A bar is drawn over the one before; the last one may still be on its way.
      const lines = (rest + piece).split(/[\r\n]/);
      rest = lines.pop() ?? '';
      lines.forEach(line);
      if (PROGRESS.test(rest.trim())) {
        line(rest);
        rest = '';
      }
    });
    child.on('error', fail);
    child.on('close', code => {
      line(rest);
      done({ code: isStopped ? undefined : (code ?? 2), says, complains });
    });
  });
}
