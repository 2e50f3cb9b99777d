/**
 * Bundles every library into one script: in a browser, the extension host fetches one script and evaluates it as
 * CommonJS. A few libraries written for other hosts are patched on the way in, and the Node modules that they ask for
 * when they find themselves in Node are empty.
 */

import type { Plugin } from 'esbuild';
import { readFileSync } from 'node:fs';

interface Change {
  readonly file: RegExp;
  readonly from: string;
  readonly to: string;
}

const changes: readonly Change[] = [
  // Waits for its WebAssembly at the top level of its module; patched to wait until it is given it
  // (`text/harfbuzz.ts`).
  {
    file: /harfbuzzjs[\\/]dist[\\/]index\.mjs$/,
    from: 'init(await createHarfBuzz());',
    to: 'export const setUp = async (wasmBinary) => init(await createHarfBuzz({ wasmBinary, locateFile: (name) => name }));',
  },
  // Exports itself only under Node.
  {
    file: /wawoff2[\\/]build[\\/]decompress_binding\.js$/,
    from: 'var moduleOverrides={};',
    to: 'module.exports=Module;var moduleOverrides={};',
  },
];

export const allWithin: Plugin = {
  name: 'all-within',
  setup(build) {
    for (const { file, from, to } of changes)
      build.onLoad({ filter: file }, ({ path }) => {
        const source = readFileSync(path, 'utf8');
        if (!source.includes(from)) throw new Error(`${path} no longer says ${from}`);
        return { contents: source.replace(from, to) };
      });
    build.onResolve({ filter: /^(fs|path|module)$/ }, ({ path }) => ({ path, namespace: 'empty' }));
    build.onLoad({ filter: /./, namespace: 'empty' }, () => ({ contents: '' }));
  },
};
