/** Finds a Chromium-like browser and opens it without a window: the machine's own first, else the packaged one. */

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { installEditor, packedBrowser } from './install.ts';

const args = [
  ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
  ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
];

export async function launchBrowser(more: readonly string[] = []): Promise<Browser> {
  const { path, env } = findBrowser();
  return chromium.launch({ executablePath: path, args: [...args, ...more], env: { ...process.env, ...env } });
}

/** What turns, glides and fades in the editor itself, whatever its settings say: each step of it is painted by the processor. */
const restless =
  '.codicon-modifier-spin, .progress-bit, .scrollbar { animation: none !important; transition: none !important; }';

/** For pages of the editor, before they are opened. */
export async function keepStill(page: Page): Promise<void> {
  await page.addInitScript((rule) => {
    // Previews are left as they are.
    if (window !== window.top) return;
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(rule);
    document.adoptedStyleSheets.push(sheet);
  }, restless);
}

interface Found {
  path: string;
  env: NodeJS.ProcessEnv;
}

let found: Found | undefined;

/** Looked for once: it is asked for its version, which takes as long as to start it. */
export function findBrowser(): Found {
  return (found ??= find());
}

function find(): Found {
  const own = process.env['TAGWRIGHT_BROWSER'] ? [process.env['TAGWRIGHT_BROWSER']] : ownCandidates();
  for (const path of own) if (existsSync(path) && runs(path, {})) return { path, env: {} };

  installEditor();
  const path = join(packedBrowser, 'chromium');
  // On a bare machine it needs the libraries that come with it; elsewhere the system's own fit better.
  for (const env of [{}, { LD_LIBRARY_PATH: join(packedBrowser, 'al2023', 'lib') }]) {
    const fonts = existsSync('/etc/fonts') ? {} : { FONTCONFIG_PATH: join(packedBrowser, 'fonts') };
    if (existsSync(path) && runs(path, env)) return { path, env: { ...env, ...fonts } };
  }
  throw new Error(
    'No usable browser was found. Install Chrome, Chromium or Edge (on Debian: apt-get install chromium), ' +
      'or set TAGWRIGHT_BROWSER to the path of one.',
  );
}

function ownCandidates(): string[] {
  if (process.platform === 'darwin') {
    const apps = ['Google Chrome', 'Chromium', 'Microsoft Edge'];
    return apps.map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`);
  }
  if (process.platform === 'win32') {
    const programs = ['Google/Chrome/Application/chrome.exe', 'Microsoft/Edge/Application/msedge.exe'];
    const folders = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].map((name) => process.env[name] ?? '');
    return folders.flatMap((folder) => programs.map((program) => join(folder, program)));
  }
  const names = ['google-chrome', 'google-chrome-stable', 'chromium', 'chromium-browser', 'microsoft-edge'];
  return (process.env['PATH'] ?? '').split(':').flatMap((folder) => names.map((name) => join(folder, name)));
}

/** A file of the right name may be a stub that only says how to install the browser. */
function runs(path: string, env: NodeJS.ProcessEnv): boolean {
  // On Windows the question opens a window instead of answering.
  if (process.platform === 'win32') return true;
  return spawnSync(path, ['--version'], { env: { ...process.env, ...env }, timeout: 60_000 }).status === 0;
}
