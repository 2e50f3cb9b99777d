/** The preview's page in a browser without an editor. */

import type { Page } from 'playwright-core';
import { shellHtml } from '../../src/vscode/preview/html.ts';
import type { ToHost, ToPage } from '../../src/protocol/preview.ts';
import { bundledPage, delivered, openHosted, painted, type HostedOptions } from './hosted-page.ts';
import { source } from './scenes.ts';

const origin = 'http://preview.invalid';

export interface PageOptions extends Partial<HostedOptions> {
  /** What the host kept from earlier times. */
  readonly remembered?: unknown;
  /** What the page does after a pause waits for `elapse`, however slow or fast the machine is. */
  readonly pausesHeld?: boolean;
}

declare global {
  interface Window {
    elapse: () => void;
  }
}

let bundle: ReturnType<typeof bundledPage> | undefined;

export async function openPage(options: PageOptions = {}): Promise<PreviewPage> {
  const { remembered = {}, pausesHeld, ...more } = options;
  bundle ??= bundledPage('webview/preview/main.ts', 'webview/preview/main.css');
  const content = { origin, shell: shell(JSON.stringify(remembered)), files: await bundle };
  const how = { theme: 'light', width: 760, height: 700, ...more } as const;
  const { page, errors } = await openHosted(content, how, pausesHeld ? [holdPauses] : []);
  return new PreviewPage(page, errors);
}

export class PreviewPage {
  constructor(
    readonly page: Page,
    /** Errors of scripts and breaches of the policy. */
    readonly errors: readonly string[],
  ) {}

  send(message: ToPage): Promise<void> {
    return delivered(this.page, message);
  }

  messages(): Promise<ToHost[]> {
    return this.page.evaluate(() => window.recorded.messages as ToHost[]);
  }

  state(): Promise<unknown> {
    return this.page.evaluate(() => window.recorded.state);
  }

  /** The drawing's transform, once the browser has painted. */
  async transform(): Promise<string> {
    await painted(this.page);
    return this.page.evaluate(() => document.querySelector<SVGElement>('#world')!.style.transform);
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
