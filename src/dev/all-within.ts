/**
 * In a browser the extension's host fetches one script and evaluates it as CommonJS, so every library is within the bundle.
 * A few that were made with other hosts in mind are changed on the way in; what they ask of Node, where they find themselves
 * in it, is empty.
 */

import type { Plugin } from 'esbuild';
import { readFileSync } from 'node:fs';

interface Change {
  readonly file: RegExp;
  readonly from: string;
  readonly to: string;
}

const changes: readonly Change[] = [
  // Waits for its WebAssembly at the top of its module; here it waits to be handed it (`text/harfbuzz.ts`).
  {
    file: /harfbuzzjs[\\/]dist[\\/]index\.mjs$/,
    from: 'init(await createHarfBuzz());',
    to: 'export const setUp = async (wasmBinary) => init(await createHarfBuzz({ wasmBinary, locateFile: (name) => name }));',
  },
  // Gives itself to whoever requires it in Node only.
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
