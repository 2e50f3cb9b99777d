import assert from 'node:assert/strict';
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { keepStill, launchBrowser } from '../browser.ts';
import { limitMs, root } from '../editor.ts';

describe('npm start', () => {
  let folder: string;
  let started: ChildProcess | undefined;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'tagwright-start-'));
  });

  afterEach(() => {
    started?.kill('SIGKILL');
    rmSync(folder, { recursive: true, force: true });
  });

  it('checks the samples, serves an editor on a copy of them, and ends with all it started on Ctrl+C', async () => {
    // Other tests are reading what a build would write.
    const how = ['--served', '--no-open', '--no-build', '--folder', folder];
    const args = ['--import', 'tsx', 'src/dev/start.ts', ...how];
    started = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
    const ended = once(started, 'exit') as Promise<[number | null]>;
    const output = await printedUntil(started, /Ctrl\+C/);

    const samples = readdirSync(join(root, 'samples')).filter((name) => name.endsWith('.tag.yaml'));
    assert.ok(samples.length > 0);
    for (const name of samples) assert.match(output, new RegExp(`${name} +\\d+\\.\\d × \\d+\\.\\d +\\d`), name);
    const shown = readdirSync(folder).filter((name) => name !== '.vscode');
    assert.deepEqual(shown.sort(), readdirSync(join(root, 'samples')).sort());

    const url = /http:\S+/.exec(output)?.[0] ?? '';
    const browser = await launchBrowser();
    try {
      const page = await browser.newPage();
      await keepStill(page);
      await page.goto(url);
      await page.locator('.tab.active', { hasText: '.tag.yaml' }).waitFor({ timeout: limitMs });
      const outer = page.locator('iframe.webview.ready').last().contentFrame();
      await outer.frameLocator('iframe#active-frame').locator('#drawing .solid').first().waitFor({ timeout: limitMs });
    } finally {
      await browser.close();
    }

    started.kill('SIGINT');
    assert.deepEqual((await ended)[0], 0);
    await assert.rejects(fetch(url), 'nobody answers at the address any more');
  });
});

/** All that was printed by the time it matches; rejects if the process ends before that. */
function printedUntil(child: ChildProcess, pattern: RegExp): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = '';
    child.stdout!.setEncoding('utf8').on('data', (chunk: string) => {
      text += chunk;
      if (pattern.test(text)) resolve(text);
    });
    child.on('exit', () => {
      reject(new Error(`It ended early, after printing:\n${text}`));
    });
  });
}
