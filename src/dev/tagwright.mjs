/**
 * Runs the command line from a checkout: installs and builds first if that was never done or a source is newer. Build
 * output goes to standard error; standard output belongs to the command.
 */

import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';

const root = join(import.meta.dirname, '..', '..');
const cli = join(root, 'dist', 'cli.mjs');

function newest(folder) {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return Math.max(...files.map((file) => statSync(join(file.parentPath ?? file.path, file.name)).mtimeMs));
}

function run(script, ...args) {
  const { status } = spawnSync(process.execPath, [...args, join(import.meta.dirname, script)], {
    cwd: root,
    stdio: ['ignore', process.stderr, 'inherit'],
  });
  if (status !== 0) process.exit(2);
}

if (!existsSync(cli) || statSync(cli).mtimeMs < Math.max(newest(join(root, 'src')), newest(join(root, 'schemas')))) {
  run('ensure-installed.mjs');
  run('build.ts', '--import', 'tsx');
}
const { status } = spawnSync(process.execPath, [cli, ...process.argv.slice(2)], { stdio: 'inherit' });
process.exit(status ?? 2);
