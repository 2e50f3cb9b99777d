/** The page of sheets in a browser without an editor: the real shell under its real policy, with a stand-in for the host. */

import * as esbuild from 'esbuild';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import type { FromSheetsPage, ToSheetsPage } from '../../src/protocol/sheets.ts';
import { sheetsHtml } from '../../src/vscode/sheets/sheets-html.ts';
import { themes, type Theme } from './themes.ts';

const root = join(import.meta.dirname, '..', '..');
const origin = 'http://sheets.invalid';

export interface SheetsPageOptions {
  readonly theme?: Theme;
  readonly width?: number;
  readonly height?: number;
  /** What a page that was hidden had kept. */
  readonly state?: unknown;
}

let bundle: Promise<Map<string, string>> | undefined;

export async function openSheets(browser: Browser, options: SheetsPageOptions = {}): Promise<SheetsInBrowser> {
  const { theme = 'light', width = 900, height = 700, state } = options;
  const page = await browser.newPage({ viewport: { width, height } });
  page.setDefaultTimeout(45_000);
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  bundle ??= bundlePage();
  const files = await bundle;
  await page.route(`${origin}/**`, async (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    const contentType = name.endsWith('.js') ? 'text/javascript' : name.endsWith('.css') ? 'text/css' : 'text/html';
    const body = name === 'index.html' ? shell() : files.get(name);
    await (body === undefined ? route.fulfill({ status: 404 }) : route.fulfill({ contentType, body }));
  });
  await page.addInitScript('globalThis.__name = (value) => value');
  await page.addInitScript(
    ({ kept, variables, bodyClass }) => {
      const recorded = { messages: [] as unknown[], state: kept };
      Object.assign(window, {
        recorded,
        acquireVsCodeApi: () => ({
          postMessage: (message: unknown) => recorded.messages.push(message),
          getState: () => recorded.state,
          setState: (value: unknown) => (recorded.state = value),
        }),
      });
      document.addEventListener('DOMContentLoaded', () => {
        document.body.classList.add(bodyClass);
        for (const [name, value] of Object.entries(variables)) document.documentElement.style.setProperty(name, value);
      });
    },
    { kept: state, variables: themes[theme].variables, bodyClass: themes[theme].bodyClass },
  );
  await page.goto(`${origin}/index.html`);
  const open = new SheetsInBrowser(page, errors);
  await open.said('ready');
  return open;
}

export class SheetsInBrowser {
  constructor(
    readonly page: Page,
    /** Errors of scripts and breaches of the policy. */
    readonly errors: readonly string[],
  ) {}

  async send(message: ToSheetsPage): Promise<void> {
    await this.page.evaluate((data) => {
      window.postMessage(data, '*');
    }, message);
    if (message.type === 'sheets') await this.page.waitForSelector('[data-shows="sheets"]');
    await this.painted();
  }

  /** Once what is drawn now is on the screen, and all has the room that it leaves. */
  painted(): Promise<void> {
    return this.page.evaluate(
      () =>
        new Promise<void>((resolve) => {
          requestAnimationFrame(() => {
            requestAnimationFrame(() => {
              resolve();
            });
          });
        }),
    );
  }

  messages(): Promise<FromSheetsPage[]> {
    return this.page.evaluate(() => window.recorded.messages as unknown as FromSheetsPage[]);
  }

  state(): Promise<unknown> {
    return this.page.evaluate(() => window.recorded.state);
  }

  /** The last message of a kind, once there is one. */
  async said<T extends FromSheetsPage['type']>(type: T): Promise<Extract<FromSheetsPage, { type: T }>> {
    const found = await this.page.waitForFunction((wanted) => {
      return (window.recorded.messages as unknown as { type: string }[]).findLast((each) => each.type === wanted);
    }, type);
    return (await found.jsonValue()) as Extract<FromSheetsPage, { type: T }>;
  }

  /** The middle of a piece on the screen, once nothing moves any more. */
  async middleOf(number: number): Promise<{ readonly x: number; readonly y: number }> {
    const piece = this.page.locator('.piece', { has: this.page.locator(`text="${number}"`) }).first();
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

async function bundlePage(): Promise<Map<string, string>> {
  const built = await esbuild.build({
    absWorkingDir: root,
    entryPoints: ['webview/sheets/sheets.ts', 'webview/sheets/sheets.css'],
    bundle: true,
    write: false,
    outdir: 'page',
    format: 'iife',
    target: 'es2022',
  });
  return new Map(built.outputFiles.map((file) => [file.path.split(/[/\\]/).at(-1)!, file.text] as const));
}
