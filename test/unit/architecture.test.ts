import assert from 'node:assert/strict';
import { build } from 'esbuild';
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { importsOf } from '../../src/dev/imports.ts';

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

const files = [...sourcesIn('src'), ...sourcesIn('webview')];
const imports: readonly Import[] = files.flatMap((file) => importsOf(file).map((to) => ({ file, to })));

/** The messages of each page, and what they are about. */
const protocols = ['preview', 'samples', 'scene', 'sheets'].map((page) => `src/protocol/${page}.ts`);

/** The rooms of `src`, each of which may use those before it. What `dev` builds it may read; nothing reads `dev`. */
const rooms =
  'look geometry core text spec edits tag checks strength toolpath nesting engine export jobs fixes language test-pieces protocol scene cli vscode dev'.split(
    ' ',
  );
/** The folders of large rooms likewise; `.` stands for what lies in none. */
const subRooms: Readonly<Record<string, string>> = {
  spec: 'yaml schema files batch slips model read .',
  checks: 'measures .',
  export: 'job page pictures words proof pdf bench . sheets',
  jobs: 'read orders layout offcuts . papers',
};
const roomOf = (file: string): string => file.split('/')[1]!;
const isEngineFile = (file: string): boolean =>
  file.startsWith('src/') && !['cli', 'vscode', 'dev'].includes(roomOf(file));
const isNodeModule = (to: string): boolean =>
  to.startsWith('node:') || ['fs', 'path', 'os', 'url', 'child_process'].includes(to);

function assertNone(offending: readonly Import[], rule: string): void {
  assert.deepEqual(
    offending.map(({ file, to }) => `${file} imports ${to}`),
    [],
    rule,
  );
}

/** Files that import each other, however far round: each circle once, by its first file. */
function circles(): string[][] {
  const uses = new Map<string, string[]>();
  for (const { file, to } of imports) uses.set(file, [...(uses.get(file) ?? []), to]);
  const found: string[][] = [];
  const done = new Set<string>();
  const follow = (file: string, way: readonly string[]): void => {
    const at = way.indexOf(file);
    if (at >= 0) found.push(way.slice(at));
    if (at >= 0 || done.has(file)) return;
    for (const to of uses.get(file) ?? []) follow(to, [...way, file]);
    done.add(file);
  };
  for (const file of files) follow(file, []);
  return found;
}

describe('The arrows between the parts of the code', () => {
  it('are read from every file, and every file has its room', () => {
    assert.ok(files.length > 60, String(files.length));
    assert.ok(imports.some(({ file, to }) => file === 'src/engine/engine.ts' && to === 'src/spec/parse.ts'));
    assert.ok(imports.some(({ file, to }) => file === 'webview/preview/main.ts' && to.startsWith('webview/')));
    assert.deepEqual(
      files.filter((file) => file.startsWith('src/') && !rooms.includes(roomOf(file))),
      [],
    );
  });

  it('lead to vscode from its own room only', () => {
    assertNone(
      imports.filter(({ file, to }) => to === 'vscode' && roomOf(file) !== 'vscode'),
      'only src/vscode knows the editor',
    );
    assert.ok(imports.some(({ to }) => to === 'vscode'));
  });

  it('run one way from room to room', () => {
    assertNone(
      imports.filter(
        ({ file, to }) =>
          file.startsWith('src/') &&
          ((to.startsWith('src/') && rooms.indexOf(roomOf(to)) > rooms.indexOf(roomOf(file))) ||
            // `npm start` serves the editor that the tests drive.
            (roomOf(file) !== 'dev' && /^(webview|test)\//.test(to))),
      ),
      'each room uses those before it',
    );
  });

  for (const [room, order] of Object.entries(subRooms))
    it(`run one way within ${room}`, () => {
      const places = order.split(' ');
      const placeOf = (file: string): number => {
        const [, , folder = '', rest] = file.split('/');
        return places.indexOf(rest === undefined ? '.' : folder);
      };
      const within = imports.filter(({ file, to }) => [file, to].every((each) => each.startsWith(`src/${room}/`)));
      assert.deepEqual(
        [...new Set(within.map(({ file }) => file))].filter((file) => placeOf(file) < 0),
        [],
      );
      assertNone(
        within.filter(({ file, to }) => !to.includes('.generated.') && placeOf(to) > placeOf(file)),
        `each folder of ${room} uses those before it`,
      );
    });

  it('never run in a circle', () => {
    assert.deepEqual(circles(), []);
  });

  it('lead from the engine to Node only in files named for it', () => {
    assertNone(
      imports.filter(({ file, to }) => isEngineFile(file) && isNodeModule(to) && !basename(file).startsWith('node-')),
      'file reads are handed in',
    );
  });

  it('never lead from the extension in a browser to Node, however far they go', () => {
    const reached = new Set(['src/vscode/start-web.ts', 'src/vscode/extension.ts']);
    for (const file of reached)
      for (const { to } of imports.filter((each) => each.file === file)) if (to.startsWith('src/')) reached.add(to);
    assert.ok(reached.has('src/engine/engine.ts'));
    assertNone(
      imports.filter(({ file, to }) => reached.has(file) && isNodeModule(to)),
      'there is no Node in a browser',
    );
  });

  for (const entry of ['src/vscode/start-node.ts', 'src/vscode/start-web.ts'])
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
      assert.ok(inputs.includes('src/vscode/start.ts'));
      const small = [
        'src/vscode/common/documents.ts',
        'src/vscode/features/tasks.ts',
        'src/vscode/preview/view-type.ts',
        'src/nesting/threads/thread-count.ts',
        'src/text/font-files.ts',
      ];
      const ours = (file: string) =>
        /^src\/(vscode\/start[a-z-]*|.*\/node-[a-z-]+)\.ts$/.test(file) || small.includes(file);
      assert.deepEqual(
        inputs.filter((file) => !ours(file)),
        [],
      );
    });

  it('lead from the pages to their own files, the protocol, units and the looks of materials', () => {
    assertNone(
      imports.filter(
        ({ file, to }) =>
          file.startsWith('webview/') &&
          !/^(webview\/|src\/look\/|src\/core\/units\.ts$)/.test(to) &&
          !protocols.includes(to),
      ),
      'the pages know the messages, the units and the looks and nothing else',
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
    ['papaparse', /^src\/spec\/files\/table\.ts$/],
    ['svgpath', /^src\/tag\/drawing\/svg-path\.ts$/],
    ['qr', /^src\/tag\/shapes\/code\.ts$/],
    ['yaml', /^src\/spec\/(yaml|files)\/[a-z-]+\.ts$/],
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
