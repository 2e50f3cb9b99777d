/** Runs an in-editor test suite in the served editor; arguments, output and exit code as a desktop VS Code has them. */

import { createWriteStream, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'node:util';
import type { Page } from 'playwright-core';
import { keepStill, launchBrowser } from './browser.ts';
import { artefacts } from './editor.ts';
import { serveEditor, unmoved } from './server.ts';
import { resultMark } from './suite/index.ts';

/** Everything the page and its extension host print that is no test result: mostly what a VS Code without a network regrets. */
const logFile = join(artefacts, 'in-editor.log');
const limitMs = 12 * 60_000;

function argument(name: string): string {
  const prefix = `--${name}=`;
  const value = process.argv.find((arg) => arg.startsWith(prefix));
  if (!value) throw new Error(`${prefix}… is missing`);
  return value.slice(prefix.length);
}

/** Resolves with the suite's exit code. VS Code calls these two functions of the page if it finds them. */
async function suiteEnd(page: Page, url: string): Promise<number> {
  const log = createWriteStream(logFile);
  await page.exposeFunction('codeAutomationLog', (_type: string, args: unknown[]) => {
    const text = format(...args);
    if (text.startsWith(resultMark)) console.log(text);
    else log.write(`${text}\n`);
  });
  const ended = new Promise<number>((resolve, reject) => {
    void page.exposeFunction('codeAutomationExit', resolve);
    setTimeout(() => {
      reject(new Error(`The suite did not end within ${limitMs / 60_000} minutes.`));
    }, limitMs).unref();
  });
  await page.goto(url);
  return ended;
}

const folder = process.argv.slice(2).find((arg) => !arg.startsWith('-'));
if (!folder) throw new Error('The folder to open is missing');
// Whoever started this holds the other end; should that end die, so does everything here.
process.stdin.once('close', () => process.exit(1)).resume();
process.stdin.unref();

mkdirSync(artefacts, { recursive: true });
const server = await serveEditor({
  folder,
  extension: argument('extensionDevelopmentPath'),
  tests: argument('extensionTestsPath'),
  settings: unmoved,
});
const browser = await launchBrowser();
try {
  const page = await browser.newPage({ viewport: { width: 800, height: 500 } });
  await keepStill(page);
  process.exitCode = await suiteEnd(page, server.url);
  if (process.exitCode !== 0) console.log(`What else the editor printed: ${logFile}`);
} finally {
  await browser.close();
  await server.close();
}
