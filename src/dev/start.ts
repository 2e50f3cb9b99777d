/**
 * `npm start`: builds, checks the samples, and opens a real editor on a copy of them with the extension loaded: the
 * `code` on this machine where there is one and a display to show it on, else a VS Code served to the browser.
 *
 *     npm start -- --folder DIR   work in DIR; it gets a copy of the samples if it is empty or new
 *     npm start -- --served       serve to the browser even if a desktop VS Code is available
 *     npm start -- --no-open      print the address, open nothing
 *     npm start -- --no-build     use the existing `dist/`
 */

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { accessSync, constants, cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { serveEditor } from '../../test/editor/server.ts';
import { buildAll } from './build.ts';
import { checkedTable, samplesFolder, specsIn } from './samples-table.ts';

const root = join(import.meta.dirname, '..', '..');
const { values } = parseArgs({
  options: {
    folder: { type: 'string' },
    served: { type: 'boolean', default: false },
    'no-open': { type: 'boolean', default: false },
    'no-build': { type: 'boolean', default: false },
  },
});

if (!values['no-build']) await buildAll();
console.log(`\n${checkedTable(join(root, 'dist', 'cli.mjs'), samplesFolder)}\n`);

const folder = workFolder(values.folder);
console.log(`Your copy of the samples: ${folder}`);
/** Opened at once, so that there is something to see. */
const first = specsIn(folder).slice(0, 1);
const code = onPath('code');
if (code !== undefined && hasDisplay() && !values.served && !values['no-open']) openDesktop(code);
else await openServed();

function workFolder(wanted: string | undefined): string {
  const path = wanted === undefined ? mkdtempSync(join(tmpdir(), 'tagwright-samples-')) : resolve(wanted);
  if (existsSync(path) && readdirSync(path).length > 0) return path;
  cpSync(samplesFolder, path, { recursive: true });
  // The first thing to see should be a tag, not text.
  mkdirSync(join(path, '.vscode'));
  writeFileSync(join(path, '.vscode', 'settings.json'), '{"tagwright.preview.openWithSpec": true}\n');
  return path;
}

function openDesktop(program: string): void {
  console.log('Opening VS Code.');
  const args = [
    `--extensionDevelopmentPath=${root}`,
    '--new-window',
    folder,
    ...first.map((name) => join(folder, name)),
  ];
  spawn(program, args, { stdio: 'inherit', shell: process.platform === 'win32' });
}

/** Serves until Ctrl+C; the copy is kept. */
async function openServed(): Promise<void> {
  const server = await serveEditor({ folder, extension: root, ...(first[0] ? { file: first[0] } : {}) });
  console.log(`\nThe editor is open to your browser at\n\n  ${server.url}\n\nCtrl+C ends it.`);
  if (hasDisplay() && !values['no-open']) openBrowser(server.url);
  // A pending promise alone would not keep the process alive; the server's pipes do.
  await Promise.race([once(process, 'SIGINT'), once(process, 'SIGTERM'), server.ended]);
  await server.close();
  console.log('\nEnded.');
}

function openBrowser(url: string): void {
  const opener = { darwin: 'open', win32: 'explorer' }[process.platform as string] ?? 'xdg-open';
  // The address has been printed in any case.
  spawn(opener, [url], { stdio: 'ignore' }).on('error', () => undefined);
}

function hasDisplay(): boolean {
  if (process.platform !== 'linux') return true;
  return Boolean(process.env['DISPLAY'] ?? process.env['WAYLAND_DISPLAY']);
}

function onPath(name: string): string | undefined {
  const files = process.platform === 'win32' ? [`${name}.cmd`] : [name];
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  return folders.flatMap((path) => files.map((file) => join(path, file))).find(isExecutable);
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
