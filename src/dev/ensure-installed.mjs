/**
 * Installs the project's packages if they are missing or differ from the lock file, so that `npm start` and `npm test`
 * are the only commands that a fresh checkout needs. Uses only Node itself, because it runs before anything is
 * installed.
 */

import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';

const root = join(import.meta.dirname, '..', '..');
const lock = join(root, 'package-lock.json');
// npm writes this file at the end of every install; it lists what is actually there.
const installed = join(root, 'node_modules', '.package-lock.json');

/** Whether every package of the lock file is installed in its version; optional ones may be for other platforms. */
function complete() {
  if (!existsSync(installed)) return false;
  const [wanted, there] = [lock, installed].map((file) => JSON.parse(readFileSync(file, 'utf8')).packages);
  return Object.entries(wanted).every(
    ([path, { version, optional }]) => path === '' || (there[path] ? there[path].version === version : optional),
  );
}

const major = Number(process.versions.node.split('.')[0]);
if (major < 20) {
  console.error(`Tagwright needs Node 20 or newer; this is Node ${process.versions.node}.`);
  process.exit(1);
}

if (!complete()) {
  console.log('Installing packages (npm ci) …');
  const { status } = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
  });
  if (status !== 0) {
    console.error('npm ci failed; see above. With the network back, run the same command again.');
    process.exit(1);
  }
}
