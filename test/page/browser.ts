/** One browser for all tests of a process, and in it one session: starting a browser costs as much as several tests. */

import type { BrowserContext } from 'playwright-core';
import { launchBrowser } from '../editor/browser.ts';

/** Pages come and go within one process of the browser, which is there as long as any page is. */
const oneForAllPages = '--renderer-process-limit=1';

let started: Promise<BrowserContext> | undefined;

/** What pages share is nothing that the pages here keep anything in. It ends with the process. */
export function session(): Promise<BrowserContext> {
  started ??= (async () => {
    const browser = await launchBrowser([oneForAllPages]);
    const context = await browser.newContext();
    await context.newPage();
    return context;
  })();
  return started;
}
