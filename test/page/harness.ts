/** The preview's page in a browser without an editor: the real shell under its real policy, with a stand-in for the host. */

import * as esbuild from 'esbuild';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { shellHtml } from '../../src/vscode/preview/html.ts';
import type { ToHost, ToPage } from '../../src/protocol/preview.ts';
import { source } from './scenes.ts';
import { themes, type Theme } from './themes.ts';

const root = join(import.meta.dirname, '..', '..');
const origin = 'http://preview.invalid';

export interface PageOptions {
  readonly theme?: Theme;
  readonly width?: number;
  readonly height?: number;
  /** What a page that was hidden had kept. */
  readonly state?: unknown;
  readonly reducedMotion?: boolean;
  /** What the host kept from earlier times. */
  readonly remembered?: unknown;
  /** What the page does after a pause waits for `elapse`, however slow or fast the machine is. */
  readonly pausesHeld?: boolean;
}

/** What the page did to its host, as the stand-in recorded it. */
interface Recorded {
  readonly messages: ToHost[];
  state: unknown;
}

declare global {
  interface Window {
    recorded: Recorded;
    elapse: () => void;
  }
}

let bundle: Promise<Map<string, string>> | undefined;

export async function openPage(browser: Browser, options: PageOptions = {}): Promise<PreviewPage> {
  const { theme = 'light', width = 760, height = 700, state, reducedMotion = false, remembered, pausesHeld } = options;
  const page = await browser.newPage({
    viewport: { width, height },
    reducedMotion: reducedMotion ? 'reduce' : 'no-preference',
  });
  page.setDefaultTimeout(45_000);
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    // A breach of the content security policy is reported here.
    if (message.type() === 'error') errors.push(message.text());
  });
  bundle ??= bundlePage();
  const files = await bundle;
  await page.route(`${origin}/**`, async (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    const contentType = name.endsWith('.js') ? 'text/javascript' : name.endsWith('.css') ? 'text/css' : 'text/html';
    const body = name === 'index.html' ? shell(JSON.stringify(remembered ?? {})) : files.get(name);
    await (body === undefined ? route.fulfill({ status: 404 }) : route.fulfill({ contentType, body }));
  });
  // The loader that runs these tests names functions by this helper, which functions sent to the page then miss.
  await page.addInitScript('globalThis.__name = (value) => value');
  await page.addInitScript(hostStandIn, {
    state,
    variables: themes[theme].variables,
    bodyClass: themes[theme].bodyClass,
  });
  if (pausesHeld) await page.addInitScript(holdPauses);
  await page.goto(`${origin}/index.html`);
  await page.waitForFunction(() => window.recorded.messages.some(({ type }) => type === 'ready'));
  return new PreviewPage(page, errors);
}

export class PreviewPage {
  constructor(
    readonly page: Page,
    /** Errors of scripts and breaches of the policy. */
    readonly errors: readonly string[],
  ) {}

  /** Resolves once the page has dealt with it, which it does at once, message by message. */
  async send(message: ToPage): Promise<void> {
    await this.page.evaluate(
      (data) =>
        new Promise<void>((resolve) => {
          const last = 'nothing of this page’s';
          window.addEventListener('message', function listener(event) {
            if (event.data !== last) return;
            window.removeEventListener('message', listener);
            resolve();
          });
          window.postMessage(data, '*');
          window.postMessage(last, '*');
        }),
      message,
    );
  }

  messages(): Promise<ToHost[]> {
    return this.page.evaluate(() => window.recorded.messages);
  }

  state(): Promise<unknown> {
    return this.page.evaluate(() => window.recorded.state);
  }

  /** The drawing's transform, once the browser has painted. */
  transform(): Promise<string> {
    return this.page.evaluate(
      () =>
        new Promise<string>((resolve) => {
          requestAnimationFrame(() => {
            requestAnimationFrame(() => {
              resolve(document.querySelector<SVGElement>('#world')!.style.transform);
            });
          });
        }),
    );
  }

  /** With `pausesHeld`: all pauses that have begun are over. */
  elapse(): Promise<void> {
    return this.page.evaluate(() => {
      window.elapse();
    });
  }

  async close(): Promise<void> {
    await this.page.close();
  }
}

/** Runs in the page before its script: timers of a tenth of a second and more stand until `elapse`. */
function holdPauses(): void {
  const held = new Map<number, () => void>();
  const [set, clear] = [window.setTimeout.bind(window), window.clearTimeout.bind(window)];
  let id = 1e9;
  Object.assign(window, {
    setTimeout: (callback: () => void, delay = 0) => {
      if (delay < 100) return set(callback, delay);
      held.set(++id, callback);
      return id;
    },
    clearTimeout: (timer: number) => {
      if (!held.delete(timer)) clear(timer);
    },
    elapse: () => {
      const due = [...held.values()];
      held.clear();
      for (const callback of due) callback();
    },
  });
}

/** Runs in the page before its script. */
function hostStandIn(given: { state: unknown; variables: Readonly<Record<string, string>>; bodyClass: string }): void {
  const recorded: Recorded = { messages: [], state: given.state };
  window.recorded = recorded;
  Object.assign(window, {
    acquireVsCodeApi: () => ({
      postMessage: (message: ToHost) => recorded.messages.push(message),
      getState: () => recorded.state,
      setState: (state: unknown) => {
        recorded.state = state;
      },
    }),
  });
  document.addEventListener('DOMContentLoaded', () => {
    document.body.classList.add(given.bodyClass);
    for (const [name, value] of Object.entries(given.variables))
      document.documentElement.style.setProperty(name, value);
  });
}

function shell(remembered: string): string {
  return shellHtml({
    cspSource: origin,
    scriptUri: `${origin}/main.js`,
    styleUri: `${origin}/main.css`,
    nonce: 'bm9uY2U',
    source,
    remembered,
  });
}

async function bundlePage(): Promise<Map<string, string>> {
  const built = await esbuild.build({
    absWorkingDir: root,
    entryPoints: ['webview/preview/main.ts', 'webview/preview/main.css'],
    bundle: true,
    write: false,
    outdir: 'page',
    format: 'iife',
    target: 'es2022',
  });
  const files = built.outputFiles.map((file) => [file.path.split(/[/\\]/).at(-1)!, file.text] as const);
  return new Map(files);
}
