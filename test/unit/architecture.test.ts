import assert from 'node:assert/strict';
import { build } from 'esbuild';
import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join, relative } from 'node:path';
import ts from 'typescript';

const root = join(import.meta.dirname, '..', '..');

interface Import {
  /** From the root, with slashes: `src/tag/fit.ts`. */
  readonly file: string;
  /** A package, or a file of the project from the root. */
  readonly to: string;
}

function sourcesIn(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name).replaceAll('\\', '/'))
    .filter((name) => /\.m?ts$/.test(name) && !/\.d\.m?ts$/.test(name) && !name.includes('.generated.'));
}

/** Read by the compiler's own scanner: static imports, re-exports and `import()`. */
function importsOf(file: string): Import[] {
  const { importedFiles } = ts.preProcessFile(readFileSync(join(root, file), 'utf8'), true, true);
  return importedFiles.map(({ fileName }) => ({
    file,
    to: fileName.startsWith('.') ? relative(root, join(root, dirname(file), fileName)).replaceAll('\\', '/') : fileName,
  }));
}

const files = [...sourcesIn('src'), ...sourcesIn('webview')];
const imports = files.flatMap(importsOf);

/** The messages of each page. */
const protocols = ['src/preview/protocol.ts', 'src/editor/samples-protocol.ts', 'src/editor/sheets-protocol.ts'];

const folderOf = (file: string): string => file.split('/')[1]!;
const isEngineFile = (file: string): boolean =>
  /^src\/(look|spec|text|geometry|tag|checks|fixes|edits|measure|sheet|output|language|test-pieces)\//.test(file);
const isNodeModule = (to: string): boolean =>
  /^node:/.test(to) || ['fs', 'path', 'os', 'url', 'child_process'].includes(to);

function assertNone(offending: readonly Import[], rule: string): void {
  assert.deepEqual(
    offending.map(({ file, to }) => `${file} imports ${to}`),
    [],
    rule,
  );
}

describe('The arrows between the parts of the code', () => {
  it('are read from every file', () => {
    assert.ok(files.length > 60, String(files.length));
    assert.ok(imports.some(({ file, to }) => file === 'src/engine.ts' && to === 'src/spec/parse.ts'));
    assert.ok(imports.some(({ file, to }) => file === 'webview/main.ts' && to.startsWith('webview/')));
  });

  it('lead to vscode from the editor, the preview and the extension’s entry only', () => {
    const free = ['src/preview/protocol.ts', 'src/preview/scene.ts'];
    const allowed = (file: string) =>
      !free.includes(file) &&
      (/^src\/(editor|preview)\//.test(file) || /^src\/(extension|start(-node|-web)?)\.ts$/.test(file));
    assertNone(
      imports.filter(({ file, to }) => to === 'vscode' && !allowed(file)),
      'only src/editor, src/preview and the extension’s entries know vscode',
    );
    assert.ok(imports.some(({ to }) => to === 'vscode'));
  });

  it('never lead from the engine to the editor, the preview, the page or the tools', () => {
    assertNone(
      imports.filter(
        ({ file, to }) =>
          isEngineFile(file) && /^(src\/(editor|preview|dev)\/|src\/(extension|start|cli)|webview\/|test\/)/.test(to),
      ),
      'the engine serves everyone and knows no one',
    );
  });

  it('lead from the engine to Node only in files named for it', () => {
    assertNone(
      imports.filter(({ file, to }) => isEngineFile(file) && isNodeModule(to) && !basename(file).startsWith('node-')),
      'file reads are handed in',
    );
  });

  it('never lead from the extension in a browser to Node, however far they go', () => {
    const reached = new Set(['src/start-web.ts', 'src/extension.ts']);
    for (const file of reached)
      for (const { to } of imports.filter((each) => each.file === file)) if (to.startsWith('src/')) reached.add(to);
    assert.ok(reached.has('src/engine.ts'));
    assertNone(
      imports.filter(({ file, to }) => reached.has(file) && isNodeModule(to)),
      'there is no Node in a browser',
    );
  });

  for (const entry of ['src/start-node.ts', 'src/start-web.ts'])
    it(`lead from ${entry} to nothing that has to be compiled before the editor may go on`, async () => {
      const external = ['vscode', 'node:*', './extension.cjs'];
      const options = {
        absWorkingDir: root,
        entryPoints: [entry],
        bundle: true,
        external,
        write: false,
      };
      const { metafile } = await build({ ...options, metafile: true, format: 'cjs' });
      const inputs = Object.keys(metafile.inputs);
      assert.ok(inputs.includes('src/start.ts'));
      const small = [
        'src/editor/documents.ts',
        'src/editor/tasks.ts',
        'src/preview/view-type.ts',
        'src/text/font-files.ts',
      ];
      const ours = (file: string) => /^src\/(start[a-z-]*|.*\/node-[a-z-]+)\.ts$/.test(file) || small.includes(file);
      assert.deepEqual(
        inputs.filter((file) => !ours(file)),
        [],
      );
    });

  it('keep geometry by itself', () => {
    assertNone(
      imports.filter(
        ({ file, to }) => file.startsWith('src/geometry/') && to.startsWith('src/') && !to.startsWith('src/geometry/'),
      ),
      'geometry knows polygons, not tags',
    );
  });

  it('run one way through the engine', () => {
    // Each folder may use those before it. Types of what a spec says are everyone's.
    const order = 'look geometry text spec tag checks fixes edits measure sheet output language test-pieces'.split(' ');
    assertNone(
      imports.filter(
        ({ file, to }) =>
          isEngineFile(file) && isEngineFile(to) && order.indexOf(folderOf(to)) > order.indexOf(folderOf(file)),
      ),
      'geometry, text ← spec ← tag ← checks ← fixes, output',
    );
  });

  it('lead from the page to its own files, the protocol and the looks of materials, which proofs share', () => {
    assertNone(
      imports.filter(
        ({ file, to }) => file.startsWith('webview/') && !/^(webview|src\/look)\//.test(to) && !protocols.includes(to),
      ),
      'the page knows the messages and the looks and nothing else',
    );
  });

  for (const protocol of protocols) {
    it(`lead from ${protocol} to types only`, () => {
      const text = readFileSync(join(root, protocol), 'utf8');
      const values = [...text.matchAll(/^(import|export) (?!type\b)[^]*?from '/gm)].filter(
        ([match]) => !match.includes('export interface'),
      );
      assert.deepEqual(
        values.map(([match]) => match),
        [],
      );
    });
  }

  for (const [library, where] of [
    ['clipper-lib', /^src\/geometry\/clipper\.ts$/],
    ['harfbuzzjs', /^src\/text\/[a-z-]+\.ts$/],
    ['papaparse', /^src\/spec\/table\.ts$/],
    ['svgpath', /^src\/tag\/svg-path\.ts$/],
    ['yaml', /^src\/spec\/[a-z-]+\.ts$/],
    ['delaunator', /^src\/geometry\//],
  ] as const) {
    it(`keep ${library} in its place`, () => {
      const users = new Set(imports.filter(({ to }) => to === library).map(({ file }) => file));
      assert.ok(users.size > 0);
      if (library !== 'yaml') assert.equal(users.size, 1, [...users].join(', '));
      assertNone(
        imports.filter(({ file, to }) => to === library && !where.test(file)),
        `${library} stays where it is`,
      );
    });
  }
});
