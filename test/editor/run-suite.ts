/**
 * Builds the in-editor suite and runs it inside an extension host, on a copy of the samples.
 *
 * TAGWRIGHT_EDITOR=browser (the default, works without a display) runs it in the served editor; TAGWRIGHT_EDITOR=desktop in
 * a desktop VS Code, which is downloaded. The same built suite runs in both. A word chooses the files whose name has it.
 */

import { runTests } from '@vscode/test-electron';
import { build } from 'esbuild';
import { appendFileSync, readdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { copyToTemporary, root } from './editor.ts';

const sources = join(import.meta.dirname, 'suite');
const built = join(root, 'test', 'artefacts', 'suite');

const [, , only = ''] = process.argv;

rmSync(built, { recursive: true, force: true });
await build({
  entryPoints: readdirSync(sources)
    .filter((name) => name === 'index.ts' || (name.endsWith('.test.ts') && name.includes(only)))
    .map((name) => join(sources, name)),
  outdir: built,
  outExtension: { '.js': '.cjs' },
  bundle: true,
  format: 'cjs',
  platform: 'node',
  target: 'node20',
  external: ['vscode', 'mocha'],
  sourcemap: 'inline',
  logLevel: 'warning',
});

const desktop =
  (process.env['TAGWRIGHT_EDITOR'] ?? (process.platform === 'win32' ? 'desktop' : 'browser')) === 'desktop';
const workspace = copyToTemporary(join(root, 'samples'));
// How densely it is laid out is tested elsewhere, and takes both cores meanwhile.
appendFileSync(join(workspace, 'plant-swap', 'swap.job.yaml'), '\neffort: 0.1\n');
try {
  await runTests({
    extensionDevelopmentPath: root,
    extensionTestsPath: join(built, 'index.cjs'),
    launchArgs: [workspace, '--disable-extensions'],
    ...(desktop ? {} : { vscodeExecutablePath: join(import.meta.dirname, 'launcher.mjs') }),
  });
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
} finally {
  rmSync(dirname(workspace), { recursive: true, force: true });
}
