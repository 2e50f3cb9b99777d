/**
 * `npm run test:quick`: types, lint, and the unit tests that are nearest by their imports to what changed against `main`:
 * those that name a changed file first, then those that name what names one. Neither the size of a test nor what it imports
 * says how long it takes, so the run itself is bounded (`bounded.ts`). `npm test` has them all.
 */

import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { generate } from './generate.ts';
import { importsOf } from './imports.ts';
import { bundle, largestFirst, root, StepRunner, tests, typesAndLint } from './steps.ts';

/** Imports between a test and what changed. */
const near = 2;

/** Most text of tests, in bytes: it is loaded and compiled even where none of its tests begins in time. */
const mostBytes = 250_000;

function git(...args: string[]): string[] {
  const { status, stdout } = spawnSync('git', args, { cwd: root, encoding: 'utf8' });
  return status === 0 ? stdout.split('\n').filter((line) => line !== '') : [];
}

/** Committed since the branch left `main`, or not committed yet. */
function changedFiles(): string[] {
  const [base = 'HEAD'] = git('merge-base', 'HEAD', 'main');
  const all = [...git('diff', '--name-only', base), ...git('ls-files', '--others', '--exclude-standard')];
  return all.filter((file) => existsSync(join(root, file)));
}

/** Number of imports from each file to the nearest of `some`; files that reach none are absent. */
function distancesFrom(some: readonly string[]): Map<string, number> {
  const importers = new Map<string, string[]>();
  for (const folder of ['src', 'webview', 'test/unit', 'test/fonts'])
    for (const name of readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })) {
      if (!/\.m?ts$/.test(name)) continue;
      const file = `${folder}/${name.replaceAll('\\', '/')}`;
      for (const imported of importsOf(file)) importers.set(imported, [...(importers.get(imported) ?? []), file]);
    }
  const distances = new Map(some.map((file) => [file, 0]));
  for (const [file, distance] of distances)
    for (const importer of importers.get(file) ?? [])
      if (!distances.has(importer)) distances.set(importer, distance + 1);
  return distances;
}

await generate();
const changed = changedFiles();
const distances = distancesFrom(changed);
const distanceOf = (test: string): number => distances.get(test.replaceAll('\\', '/')) ?? Infinity;
const reaching = largestFirst('test/unit').filter((test) => distanceOf(test) < Infinity);
// Of the same distance the smallest first, so that most of them come in time.
const close = reaching
  .filter((test) => distanceOf(test) <= near)
  .toReversed()
  .sort((one, other) => distanceOf(one) - distanceOf(other));
let bytes = 0;
const chosen = close.filter((test) => (bytes += statSync(join(root, test)).size) <= mostBytes);

const run = new StepRunner();
await Promise.all([
  run.step(typesAndLint),
  chosen.length > 0 ? run.inTurn([bundle(...chosen), tests('Unit tests', chosen, { isBounded: true })]) : undefined,
]);
console.log(
  `Changed: ${changed.length} files. Files of unit tests run: the nearest ${chosen.length} of ${reaching.length} that reach them. ` +
    `Tests for which there was no time are pending above.`,
);
run.end();
