/** Programs that are stopped, and what they leave. 130: as shells have it for a program that Ctrl+C has ended. */

import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { built, cli, root } from '../support/command-line.ts';
import type { Run } from '../support/command-line.ts';

/** Sends the signal at the first line that says so. */
function stoppedAt(said: RegExp, signal: 'SIGINT' | 'SIGTERM', ...args: string[]): Promise<Run> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [cli, ...args, '--progress'], { timeout: 120_000 });
    let [out, err, isSent] = ['', '', false];
    child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => {
      err += chunk.toString();
      if (!isSent && said.test(err)) isSent = child.kill(signal);
    });
    child.on('error', reject);
    child.on('close', (code) => {
      resolve({ code, out, err });
    });
  });
}

describe('A program that is stopped', function () {
  this.timeout(300_000);
  let folder: string;
  const at = (...parts: string[]) => join(folder, ...parts);
  const all = () =>
    new Map(
      readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter((each) => each.isFile())
        .map((each) => join(each.parentPath, each.name))
        .map((file) => [file, readFileSync(file, 'utf8')] as const),
    );

  before(async function () {
    // There are no such signals.
    if (process.platform === 'win32') this.skip();
    await built();
  });

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'tagwright-stop-'));
    cpSync(join(root, 'samples', 'plant-swap'), folder, { recursive: true });
  });

  afterEach(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  const endless = (): void => {
    writeFileSync(at('swap.job.yaml'), `${readFileSync(at('swap.job.yaml'), 'utf8')}\neffort: 100\n`);
  };
  const short = (): void => {
    writeFileSync(at('swap.job.yaml'), `${readFileSync(at('swap.job.yaml'), 'utf8')}\neffort: 0.1\n`);
  };

  it('leaves everything as it was, while it lays out', async () => {
    endless();
    const before = all();
    for (const signal of ['SIGINT', 'SIGTERM'] as const) {
      const { code, out, err } = await stoppedAt(
        /laying out ply3/,
        signal,
        'job',
        at('swap.job.yaml'),
        '--out',
        at('a', 'cut'),
      );
      assert.equal(code, 130);
      assert.equal(out, '');
      assert.match(err, /making tag 1 of \d+\n/);
      assert.match(err, /Stopped\. No file is half written\.\n$/);
      assert.deepEqual(all(), before);
      assert.equal(existsSync(at('a')), false);
    }
  });

  it('leaves everything as it was, while it writes', async () => {
    short();
    mkdirSync(at('cut'));
    writeFileSync(at('cut', 'swap-pieces.csv'), 'of another time');
    const before = all();
    const { code } = await stoppedAt(
      /writing sheet/,
      'SIGINT',
      'job',
      at('swap.job.yaml'),
      '--out',
      at('cut'),
      '--overwrite',
    );
    assert.equal(code, 130);
    assert.deepEqual(all(), before);
  });

  it('leaves whole files of those that are written one by one', async () => {
    const spec =
      'tagwright: 1\nbatch: [{n: a}, {n: b}, {n: c}, {n: d}, {n: e}, {n: f}]\ntitle: "{n}"\nshapes:\n  a: {text: "{n}", font: Pacifico, height: 20 mm}\npieces:\n  tag: {body: [a]}\n';
    writeFileSync(at('six.tag.yaml'), spec);
    const { code } = await stoppedAt(
      /making tag/,
      'SIGINT',
      'export',
      at('six.tag.yaml'),
      '--to',
      'svg',
      '--out',
      at('cut'),
      '--force',
    );
    assert.equal(code, 130);
    for (const [file, text] of all()) {
      assert.ok(!file.endsWith('.part'), file);
      if (file.endsWith('.svg')) assert.match(text, /<\/svg>\s*$/, file);
    }
  });
});
