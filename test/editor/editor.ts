/**
 * A served VS Code with this extension, driven through its page as a person would: files are opened by name, commands are
 * picked from the palette, text is typed. Every wait has a limit and says what it waited for.
 */

import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import type { FrameLocator, Locator, Page } from 'playwright-core';
import { keepStill, launchBrowser } from './browser.ts';
import { restore } from './restore.ts';
import { serveEditor, unmoved, type ServedEditor } from './server.ts';
import { serveStatically } from './static-server.ts';

export const root = join(import.meta.dirname, '..', '..');
export const artefacts = join(root, 'test', 'artefacts');
/** For a machine that is slow and busy; on another nothing comes near it. */
export const limitMs = 45_000;
/** After so long it is tried anew to open a list. */
const patienceMs = 3000;

/** After so long, keys that did nothing are pressed again. */
const againMs = 1500;

const sparing = {
  ...unmoved,
  // What one test did to a file is nothing that the next one can undo.
  'files.restoreUndoStack': false,
  // What the editor adds to a text and to its window by itself.
  'editor.bracketPairColorization.enabled': false,
  'editor.guides.indentation': false,
  'editor.matchBrackets': 'never',
  'editor.occurrencesHighlight': 'off',
  'editor.selectionHighlight': false,
  'editor.stickyScroll.enabled': false,
  'window.commandCenter': false,
  'workbench.iconTheme': null,
};

export interface OpenOptions {
  /** Copied to a temporary folder, which is what the editor opens. Default: the samples. */
  folder?: string;
  size?: { width: number; height: number };
  settings?: Record<string, unknown>;
  /** Without a server that runs extensions: all of it runs in the browser. */
  inBrowser?: boolean;
}

/** A copy, so that no run changes what the next one starts from. It lies in a folder of its own. */
export function copyToTemporary(folder: string): string {
  const copy = join(mkdtempSync(join(tmpdir(), 'tagwright-')), basename(folder));
  cpSync(folder, copy, { recursive: true });
  return copy;
}

function removeCopy(folder: string): void {
  rmSync(dirname(folder), { recursive: true, force: true });
}

/**
 * Asks until it is so, or fails saying what was waited for. A question put to a page that the editor is just replacing is
 * put again: previews are taken away and brought back while one looks at them.
 */
export async function eventually(what: string, isSo: () => Promise<boolean>): Promise<void> {
  const deadline = Date.now() + limitMs;
  let replaced: Error | undefined;
  const asked = async (): Promise<boolean> => {
    try {
      return await isSo();
    } catch (error) {
      if (!(error instanceof Error && /frame was detached|context was destroyed/i.test(error.message))) throw error;
      replaced = error;
      return false;
    }
  };
  while (!(await asked())) {
    if (Date.now() > deadline) throw new Error(`Waited in vain for: ${what}`, { cause: replaced });
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

export class Editor {
  /** What the page and the extension host printed, for when something fails. */
  readonly log: string[] = [];

  private constructor(
    readonly page: Page,
    private readonly server: ServedEditor,
    /** What its folder is a copy of. */
    private readonly original: string,
    /** The folder that is open. */
    readonly folder: string,
    /** Ends everything that was started, the last first. */
    readonly close: () => Promise<void>,
  ) {
    page.on('console', (message) => this.log.push(message.text()));
    page.setDefaultTimeout(limitMs);
  }

  static async open(options: OpenOptions = {}): Promise<Editor> {
    const original = options.folder ?? join(root, 'samples');
    const folder = copyToTemporary(original);
    const endings: (() => Promise<void> | void)[] = [];
    const close = async (): Promise<void> => {
      for (const end of endings.splice(0).reverse()) await end();
    };
    try {
      endings.push(() => {
        removeCopy(folder);
      });
      const serve = options.inBrowser ? serveStatically : serveEditor;
      const settings = { ...sparing, ...options.settings };
      const server = await serve({ folder, extension: root, settings });
      endings.push(() => server.close());
      const browser = await launchBrowser();
      endings.push(() => browser.close());
      const context = await browser.newContext({ viewport: options.size ?? { width: 1200, height: 700 } });
      const page = await context.newPage();
      await keepStill(page);
      const editor = new Editor(page, server, original, folder, close);
      await page.goto(server.url);
      await page.locator('.explorer-folders-view .monaco-list-row').first().waitFor();
      return editor;
    } catch (error) {
      await close();
      throw error;
    }
  }

  /** Ends everything at once, as this process ends. The browser sees to itself. */
  abandon(): void {
    this.server.abandon();
    removeCopy(this.folder);
  }

  /**
   * As after a start, in a moment: nothing open, nothing unsaved, no panel, the files as they were. What the extension
   * remembers stays: how a file's preview was looked at, and which formats were exported last.
   */
  async clear(): Promise<void> {
    const { page } = this;
    await page.keyboard.press('Escape');
    const tabs = page.locator('.tab');
    if ((await tabs.count()) > 0) {
      // By keys: the palette, which lists all commands, takes ten times as long. A page that takes the focus meanwhile swallows one.
      let pressed = 0;
      const leave = page.locator('.monaco-dialog-box').getByRole('button', { name: "Don't Save", exact: true });
      await eventually('nothing to be open', async () => {
        if (await leave.isVisible()) await leave.click();
        else if ((await tabs.count()) > 0 && Date.now() - pressed > againMs) {
          pressed = Date.now();
          await page.keyboard.press('Control+k');
          await page.keyboard.press('Control+w');
        }
        return (await tabs.count()) === 0 && (await page.locator('iframe.webview').count()) === 0;
      });
    }
    if (await page.locator('.notifications-center, .notification-toast').first().isVisible())
      await this.runCommand('Notifications: Clear All Notifications');
    if (await page.locator('.part.panel').isVisible()) await page.keyboard.press('Control+j');
    if (!(await page.locator('.explorer-folders-view').isVisible())) await this.runCommand('View: Show Explorer');
    await restore(this.folder, this.original);
  }

  /** `name`: relative to the folder. */
  async openFile(name: string): Promise<void> {
    await this.pick('Control+p', name, (row) => row.filter({ hasText: basename(name) }).first());
    await this.page
      .locator(`.tab.active[data-resource-name="${basename(name)}"]`)
      .first()
      .waitFor();
    await this.text.focus();
  }

  /** `title` as the palette shows it, with its category: "Tagwright: Open Preview to the Side". */
  async runCommand(title: string): Promise<void> {
    // By the list of files: that of commands has hundreds of rows before anything is typed.
    await this.pick('Control+p', `>${title}`, (row) => row.and(this.page.locator(`[aria-label^="${title}"]`)).first());
  }

  /** Opens the list at the top by its key, and picks from it. */
  private async pick(key: string, text: string, which: (rows: Locator) => Locator): Promise<void> {
    const widget = this.page.locator('.quick-input-widget');
    const deadline = Date.now() + limitMs;
    for (;;) {
      await this.page.keyboard.press(key);
      try {
        await widget.locator('input.input').fill(text, { timeout: patienceMs });
        await which(widget.locator('.monaco-list-row')).click({ timeout: patienceMs });
        return;
      } catch (error) {
        // The list goes when anything else takes the focus, and a freshly opened editor knows an extension's commands a little
        // later: an open list does not learn of them.
        if (Date.now() > deadline) throw new Error(`Nothing in the list is "${text}".`, { cause: error });
        await this.page.keyboard.press('Escape');
      }
    }
  }

  /** The keyboard goes back to the text, from a view beside it. */
  async focusText(): Promise<void> {
    await eventually('the text to have the keyboard', async () => {
      await this.page.keyboard.press('Control+1');
      return this.text.focus({ timeout: patienceMs }).then(
        () => true,
        () => false,
      );
    });
  }

  /** The focused text editor's input. */
  get text(): Locator {
    return this.page
      .locator(
        '.editor-group-container.active .monaco-editor .native-edit-context, .editor-group-container.active .monaco-editor textarea',
      )
      .first();
  }

  /** Puts the cursor behind the first occurrence of a text in the active file, as it was last saved. */
  async goAfter(text: string): Promise<void> {
    const name = await this.page.locator('.tab.active').first().getAttribute('data-resource-name');
    const lines = readFileSync(join(this.folder, name!), 'utf8').split('\n');
    const line = lines.findIndex((each) => each.includes(text));
    if (line < 0) throw new Error(`${name!} does not hold "${text}".`);
    await this.goTo(line + 1, lines[line]!.indexOf(text) + text.length + 1);
  }

  /** Both count from 1. */
  async goTo(line: number, column: number): Promise<void> {
    const input = this.page.locator('.quick-input-widget input.input');
    const there = this.page.locator('.statusbar-item', { hasText: `Ln ${line}, Col ${column}` });
    // The list may be taken away before it has read what was typed.
    await eventually(`the cursor in line ${line}, column ${column}`, async () => {
      await this.page.keyboard.press('Control+g');
      try {
        await input.fill(`:${line}:${column}`, { timeout: patienceMs });
        await input.press('Enter', { timeout: patienceMs });
        await there.waitFor({ timeout: patienceMs });
        return true;
      } catch {
        await this.page.keyboard.press('Escape');
        return false;
      }
    });
    await this.text.focus();
  }

  /** Picks one of what the list at the top offers, which is open or about to be. */
  async choose(label: string): Promise<void> {
    await this.page.locator('.quick-input-widget .monaco-list-row', { hasText: label }).first().click();
  }

  /** Presses a button of the question in the middle, once its text is as expected. */
  async answer(question: RegExp, button: string): Promise<void> {
    const box = this.page.locator('.monaco-dialog-box', { hasText: question });
    await box.getByRole('button', { name: button, exact: true }).click();
    await box.waitFor({ state: 'detached' });
  }

  /** Takes what an input at the top proposes, such as the name to save under, once it proposes `ending`. */
  async acceptQuickInput(ending: string): Promise<void> {
    const input = this.page.locator('.quick-input-widget input.input');
    await eventually(`a proposal that ends in ${ending}`, async () => (await input.inputValue()).endsWith(ending));
    await input.press('Enter');
  }

  /** Picks a fix from the menu at the cursor; fixes come a moment after the problems they are for. */
  async quickFix(title: string): Promise<void> {
    const fix = this.page.locator('.action-widget .monaco-list-row', { hasText: title });
    await eventually(`the quick fix "${title}"`, async () => {
      await this.page.keyboard.press('Control+.');
      const taken = await fix.click({ timeout: patienceMs }).then(
        () => true,
        () => false,
      );
      if (!taken) await this.page.keyboard.press('Escape');
      return taken;
    });
  }

  async type(text: string): Promise<void> {
    await this.page.keyboard.type(text, { delay: 20 });
  }

  /** Saves the active file; the key is pressed again where a preview that appears just then has taken the keyboard. */
  async save(): Promise<void> {
    const unsaved = this.page.locator('.tab.active.dirty');
    await eventually('the file to be saved', async () => {
      await this.page.keyboard.press('Control+s');
      const saved = await unsaved.waitFor({ state: 'detached', timeout: patienceMs }).then(
        () => true,
        () => false,
      );
      if (!saved) await this.focusText();
      return saved;
    });
  }

  /** The messages the Problems panel lists, once there is at least one. */
  async problems(): Promise<string[]> {
    const rows = this.page.locator('.markers-panel .monaco-list-row');
    if (!(await this.page.locator('.markers-panel').isVisible())) await this.runCommand('View: Toggle Problems');
    await rows.first().waitFor();
    const labels = await rows.evaluateAll((all) => all.map((row) => row.getAttribute('aria-label') ?? ''));
    return labels.filter((label) => !label.includes('problems in file') && label !== '');
  }

  /** The same, once one of them has this text. */
  async problem(text: string): Promise<void> {
    await eventually(`a problem with “${text}”`, async () =>
      (await this.problems()).some((each) => each.includes(text)),
    );
  }

  /** Waits until a file of the folder has been written, wholly, and is as it should be; gives its text. */
  async written(name: string, isSo: (text: string) => boolean): Promise<string> {
    const path = join(this.folder, name);
    let text = '';
    await eventually(`${name} as it should be`, () => {
      const before = text;
      text = existsSync(path) ? readFileSync(path, 'utf8') : '';
      // The editor empties a file before it writes into it, and may be caught between.
      return Promise.resolve(text === before && isSo(text));
    });
    return text;
  }

  /**
   * The document inside the preview opened last, where the extension's page lives. It is found at each question, for the
   * editor takes previews away and brings them back while one looks at them.
   */
  preview(): FrameLocator {
    return this.page
      .locator('iframe.webview.ready')
      .last()
      .contentFrame()
      .locator('iframe#active-frame')
      .contentFrame();
  }

  async openPreview(): Promise<FrameLocator> {
    const isThere = this.page.locator('iframe.webview');
    await eventually('a preview', async () => {
      // By its key; a freshly opened editor learns of an extension's keys a little later.
      await this.page.keyboard.press('Control+k');
      await this.page.keyboard.press('v');
      return isThere
        .last()
        .waitFor({ timeout: patienceMs })
        .then(
          () => true,
          () => false,
        );
    });
    const preview = this.preview();
    await preview.locator('#drawing .solid').first().waitFor();
    return preview;
  }

  /** What the editor says of this extension among those that run: where, and how long it took to start. */
  async running(): Promise<string> {
    // The slowest to start come first, and what does not go into the window is not there.
    const size = this.page.viewportSize()!;
    await this.page.setViewportSize({ ...size, height: 2400 });
    await this.runCommand('Developer: Show Running Extensions');
    // By its name, or where it is under development by its id.
    const name = this.page.locator('.name', { hasText: /^(Tagwright|tagwright\.tagwright)$/ });
    const row = this.page.locator('.extension', { has: name });
    const rowText = (await row.textContent()) ?? '';
    await this.page.setViewportSize(size);
    return rowText;
  }

  /** To `test/artefacts/NAME.png`, or to a path that ends in .png. */
  async screenshot(name: string): Promise<void> {
    mkdirSync(artefacts, { recursive: true });
    await this.page.screenshot({
      animations: 'disabled',
      path: name.endsWith('.png') ? name : join(artefacts, `${name}.png`),
    });
  }
}
