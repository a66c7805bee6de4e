// A window of Visual Studio Code in the browser, worked by keyboard and read by what it draws.
import { join } from 'node:path';
import { awaited, patience } from './patience.mjs';

// The editor writes no-break spaces where the text has spaces.
export const plain = text => text.replaceAll('\u00a0', ' ');

export class Window {
  /** `marks` says where the files' markers stood; every hover begins with `hoverStart`. */
  constructor(page, marks, hoverStart, screenshots) {
    this.page = page;
    this.marks = marks;
    this.hoverStart = hoverStart;
    this.screenshots = screenshots;
  }

  /** Runs what stands under `title` in the command palette. */
  async command(title) {
    await this.box('F1');
    await this.quickInput(`>${title}`, title);
  }

  /** Opens the box at the top; a page that is still being shown may take the focus and close it again. */
  async box(key) {
    const input = this.page.locator('.quick-input-widget:visible input[type=text]');
    await awaited(async () => {
      await this.page.keyboard.press(key);
      return input.waitFor({ timeout: 2000 }).then(() => true, () => false);
    });
  }

  /** Closes the box if it is open: where none is, the key would put away what the editor has to say. */
  async closeBox() {
    if (await this.page.locator('.quick-input-widget').isVisible()) {
      await this.page.keyboard.press('Escape');
    }
  }

  /** Types into the box at the top and presses Enter once the row that it chose contains `row`. */
  async quickInput(text, row, within = patience) {
    await this.page.locator('.quick-input-widget:visible input[type=text]').fill(text, { timeout: within });
    if (row) {
      await this.page.locator('.quick-input-widget .monaco-list-row.focused', { hasText: row }).waitFor({ timeout: within });
    }
    await this.page.keyboard.press('Enter');
  }

  /** Shows file `name`, with the cursor at `mark` or, without one, at its start. */
  async open(name, mark) {
    const { line, column } = this.marks[name][mark] ?? { line: 1, column: 1 };
    const tab = this.page.locator('.tab.active', { hasText: name });
    // A window that is still being restored may close the box while it is typed into.
    const shown = await awaited(async () => {
      await this.box('Control+p');
      try {
        await this.quickInput(name, name, 4000);
        await tab.waitFor({ timeout: 4000 });
        return true;
      } catch {
        return this.closeBox();
      }
    });
    if (!shown) {
      throw new Error(`${name} is not shown`);
    }
    await this.page.locator('.monaco-editor.focused').waitFor({ timeout: patience });
    await this.goTo(line, column);
  }

  /** Sets the caret of the file that is shown. */
  async goTo(line, column) {
    const there = this.page.locator('.statusbar', { hasText: `Ln ${line}, Col ${column}` });
    // The box takes a moment to read what is typed, and Enter comes too early for it on a busy machine.
    const arrived = await awaited(async () => {
      await this.page.keyboard.press('Control+g');
      await this.quickInput(`:${line}:${column}`);
      return there.waitFor({ timeout: 5000 }).then(() => true, () => this.page.keyboard.press('Escape'));
    });
    if (!arrived) {
      throw new Error(`the caret does not go to line ${line}, column ${column}`);
    }
  }

  /**
   * The hover at the cursor, once it says what it should begin with and `holds` is true of it; throws when that does not
   * come in time. Asks anew meanwhile: while a server starts, the editor answers with nothing or with the old one's word.
   */
  async hover(holds = () => true) {
    const widget = this.page.locator('.monaco-hover:visible', { hasText: this.hoverStart }).first();
    const shown = await awaited(async () => {
      await this.command('Show or Focus Hover');
      try {
        await widget.waitFor({ timeout: patience / 10 });
        if (await holds(widget)) {
          return true;
        }
      } catch {
        // Not there yet.
      }
      await this.page.keyboard.press('Escape');
      return false;
    });
    if (!shown) {
      throw new Error(`no hover with ${this.hoverStart}${holds.name && `, or not ${holds.name}`}`);
    }
    return widget;
  }

  /** The lines that are drawn, top to bottom. */
  async lines() {
    const drawn = await this.page
      .locator('.editor-instance .view-lines .view-line')
      .evaluateAll(nodes => nodes.map(node => [parseFloat(node.style.top), node.textContent]));
    return drawn.sort(([a], [b]) => a - b).map(([, text]) => plain(text));
  }

  async line(number) {
    return (await this.lines())[number - 1] ?? '';
  }

  squiggles() {
    return this.page.locator('.editor-instance .cdr.squiggly-error, .editor-instance .cdr.squiggly-warning, .editor-instance .cdr.squiggly-info').count();
  }

  /** The texts of the problems panel. */
  async problems() {
    const rows = await this.page.locator('.markers-panel .monaco-list-row .marker-message-details-container').allTextContents();
    return rows.map(plain);
  }

  async shot(name) {
    await this.page.screenshot({ path: join(this.screenshots, `${name}.png`) });
  }
}

/** The share of the image's area that lies in the window and in none of its ancestors' hidden overflow, 0 to 1. */
export async function seenShare(picture) {
  if ((await picture.count()) === 0) {
    return 0;
  }
  return picture.evaluate(
    img =>
      new Promise(done => {
        const watcher = new IntersectionObserver(([entry]) => {
          watcher.disconnect();
          done(Math.round(entry.intersectionRatio * 1000) / 1000);
        });
        watcher.observe(img);
      }),
  );
}

/** In the page: how light the image's top left corner is, 0 (black) to 1 (white); NaN where nothing opaque is painted. */
export function paintedLightness(img) {
  const canvas = document.createElement('canvas');
  canvas.width = img.naturalWidth;
  canvas.height = img.naturalHeight;
  const pen = canvas.getContext('2d');
  pen.drawImage(img, 0, 0);
  const [red, green, blue, opacity] = pen.getImageData(2, 2, 1, 1).data;
  return opacity === 255 ? (red + green + blue) / (3 * 255) : NaN;
}
