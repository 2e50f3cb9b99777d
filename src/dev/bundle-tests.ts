/**
 * Test files with all that they import from the project, as plain JavaScript. What translates one file at a time, in each
 * worker anew, also has every function named by a call and every import looked up at each use: a tenth of the time.
 */

import * as esbuild from 'esbuild';
import { rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { bundled, largestFirst, mochaModules, root } from './steps.ts';

/** What a file says of where it is, which is where its source is. */
const whereabouts = {
  'import.meta.dirname': '_dirname',
  'import.meta.filename': '_filename',
  'import.meta.url': '_url',
};

const saysWhereItWas: esbuild.Plugin = {
  name: 'says-where-it-was',
  setup(build) {
    build.onLoad({ filter: /\.ts$/ }, async ({ path }) => {
      const [folder, file, url] = [dirname(path), path, pathToFileURL(path).href].map((each) => JSON.stringify(each));
      const where = `const _dirname = ${folder!}, _filename = ${file!}, _url = ${url!};`;
      return { contents: where + (await readFile(path, 'utf8')), loader: 'ts' };
    });
  },
};

const common: esbuild.BuildOptions = {
  absWorkingDir: root,
  outbase: '.',
  outdir: bundled,
  bundle: true,
  packages: 'external',
  platform: 'node',
  target: 'node20',
  sourcemap: true,
  sourcesContent: false,
  define: whereabouts,
  plugins: [saysWhereItWas],
  logLevel: 'warning',
};

const files = process.argv.slice(2);
rmSync(join(root, bundled), { recursive: true, force: true });
try {
  await Promise.all([
    esbuild.build({
      ...common,
      entryPoints: files.length > 0 ? files : ['test/unit', 'test/page', 'test/editor/e2e'].flatMap(largestFirst),
      format: 'esm',
      splitting: true,
      chunkNames: 'shared/[name]-[hash]',
      outExtension: { '.js': '.mjs' },
    }),
    // Mocha requires these.
    esbuild.build({ ...common, entryPoints: [...mochaModules], format: 'cjs', outExtension: { '.js': '.cjs' } }),
  ]);
} catch {
  // esbuild has already printed its errors.
  process.exitCode = 1;
}
