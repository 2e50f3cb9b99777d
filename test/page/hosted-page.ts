/** A webview's page in a browser without an editor: the real shell under its real policy, with a stand-in for the host. */

import * as esbuild from 'esbuild';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { session } from './browser.ts';
import { themes, type Theme } from './themes.ts';

const root = join(import.meta.dirname, '..', '..');

export interface HostedOptions {
  readonly theme: Theme;
  readonly width: number;
  readonly height: number;
  /** What a page that was hidden had kept. */
  readonly state?: unknown;
  readonly reducedMotion?: boolean;
}

export interface HostedPage {
  readonly page: Page;
  /** Errors of scripts and breaches of the policy. */
  readonly errors: readonly string[];
}

/** What the page did to its host, as the stand-in recorded it. */
interface Recorded {
  readonly messages: { readonly type: string }[];
  state: unknown;
}

declare global {
  interface Window {
    recorded: Recorded;
  }
}

/**
 * @param files Beside the shell, by name.
 * @param scripts Run in the page before its own.
 */
export async function openHosted(
  {
    origin,
    shell,
    files,
  }: { readonly origin: string; readonly shell: string; readonly files: ReadonlyMap<string, string> },
  { theme, width, height, state, reducedMotion = false }: HostedOptions,
  scripts: readonly (() => void)[] = [],
): Promise<HostedPage> {
  const page = await (await session()).newPage();
  await page.setViewportSize({ width, height });
  await page.emulateMedia({ reducedMotion: reducedMotion ? 'reduce' : 'no-preference' });
  page.setDefaultTimeout(45_000);
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    // A breach of the content security policy is reported here.
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.route(`${origin}/**`, async (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    const contentType = name.endsWith('.js') ? 'text/javascript' : name.endsWith('.css') ? 'text/css' : 'text/html';
    const body = name === 'index.html' ? shell : files.get(name);
    await (body === undefined ? route.fulfill({ status: 404 }) : route.fulfill({ contentType, body }));
  });
  // The loader that runs these tests names functions by this helper, which functions sent to the page then miss.
  await page.addInitScript('globalThis.__name = (value) => value');
  const { variables, bodyClass } = themes[theme];
  await page.addInitScript(hostStandIn, { state, variables, bodyClass });
  for (const script of scripts) await page.addInitScript(script);
  await page.goto(`${origin}/index.html`);
  await page.waitForFunction(() => window.recorded.messages.some(({ type }) => type === 'ready'));
  return { page, errors };
}

/** Resolves once the page has dealt with the message, which it does at once, message by message. */
export function delivered(page: Page, message: unknown): Promise<void> {
  return page.evaluate(
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

/** Once what is drawn now is on the screen, and all has the room that it leaves. */
export function painted(page: Page): Promise<void> {
  return page.evaluate(
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

/** Script and style sheet of a page, by name. */
export async function bundledPage(...entryPoints: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const built = await esbuild.build({
    absWorkingDir: root,
    entryPoints: [...entryPoints],
    bundle: true,
    write: false,
    outdir: 'page',
    format: 'iife',
    target: 'es2022',
  });
  return new Map(built.outputFiles.map((file) => [file.path.split(/[/\\]/).at(-1)!, file.text]));
}

/** Runs in the page before its script. */
function hostStandIn(given: { state: unknown; variables: Readonly<Record<string, string>>; bodyClass: string }): void {
  const recorded: Recorded = { messages: [], state: given.state };
  window.recorded = recorded;
  Object.assign(window, {
    acquireVsCodeApi: () => ({
      postMessage: (message: { readonly type: string }) => recorded.messages.push(message),
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
