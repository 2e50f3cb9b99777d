/** The page of sheets in a browser without an editor. */

import type { Page } from 'playwright-core';
import type { FromSheetsPage, ToSheetsPage } from '../../src/protocol/sheets.ts';
import { sheetsHtml } from '../../src/vscode/sheets/sheets-html.ts';
import { bundledPage, delivered, openHosted, painted, type HostedOptions } from './hosted-page.ts';

const origin = 'http://sheets.invalid';

export type SheetsPageOptions = Partial<HostedOptions>;

let bundle: ReturnType<typeof bundledPage> | undefined;

export async function openSheets(options: SheetsPageOptions = {}): Promise<SheetsInBrowser> {
  bundle ??= bundledPage('webview/sheets/sheets.ts', 'webview/sheets/sheets.css');
  const content = { origin, shell: shell(), files: await bundle };
  const { page, errors } = await openHosted(content, { theme: 'light', width: 900, height: 700, ...options });
  return new SheetsInBrowser(page, errors);
}

export class SheetsInBrowser {
  constructor(
    readonly page: Page,
    /** Errors of scripts and breaches of the policy. */
    readonly errors: readonly string[],
  ) {}

  async send(message: ToSheetsPage): Promise<void> {
    await delivered(this.page, message);
    await this.painted();
  }

  painted(): Promise<void> {
    return painted(this.page);
  }

  messages(): Promise<FromSheetsPage[]> {
    return this.page.evaluate(() => window.recorded.messages as FromSheetsPage[]);
  }

  state(): Promise<unknown> {
    return this.page.evaluate(() => window.recorded.state);
  }

  /** The last message of a kind, once there is one. */
  async message<T extends FromSheetsPage['type']>(type: T): Promise<Extract<FromSheetsPage, { type: T }>> {
    const found = await this.page.waitForFunction((wanted) => {
      return window.recorded.messages.findLast((each) => each.type === wanted);
    }, type);
    return (await found.jsonValue()) as Extract<FromSheetsPage, { type: T }>;
  }

  /** The middle of a piece on the screen, once nothing moves any more. */
  async middleOf(number: number): Promise<{ readonly x: number; readonly y: number }> {
    const piece = this.page.locator(`.piece[aria-label^="${number}: "]`).first();
    const { x, y, width, height } = (await piece.locator('use').boundingBox())!;
    return { x: x + width / 2, y: y + height / 2 };
  }

  async close(): Promise<void> {
    await this.page.close();
  }
}

function shell(): string {
  return sheetsHtml({ cspSource: origin, scriptUri: `${origin}/sheets.js`, styleUri: `${origin}/sheets.css` });
}
