/**
 * `npm run test:quick`: types, lint, and the unit tests that are nearest by their imports to what changed against `main`: those that name a changed file, or one that does where that is not too many. How many more reach it from further off is said; `npm test` has
 * them all.
 */

import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { generate } from './generate.ts';
import { importsOf } from './imports.ts';
import { largestFirst, root, StepRunner, tests, typesAndLint } from './steps.ts';

/** Imports between a test and what changed; fewer where that is more files of tests than go into a minute. */
const [near, nearest] = [2, 1];
const filesInAMinute = 40;

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
const within = (distance: number): string[] => reaching.filter((test) => distanceOf(test) <= distance);
const chosen = within(near).length <= filesInAMinute ? within(near) : within(nearest);

const run = new StepRunner();
const jobs = availableParallelism();
await Promise.all([
  run.step(typesAndLint),
  chosen.length > 0 ? run.step(tests('Unit tests', jobs, chosen)) : undefined,
]);
console.log(
  `Changed: ${changed.length} files. Files of unit tests run: ${chosen.length} of ${reaching.length} that reach them.`,
);
run.end();
