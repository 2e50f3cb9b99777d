/**
 * Every link of every page, followed as a reader does: in the repository, and in the package, where the guide lies in
 * `dist/guide` and only what `.vscodeignore` names is there.
 */

import assert from 'node:assert/strict';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';

const root = join(import.meta.dirname, '..', '..', '..');
const guide = readdirSync(join(root, 'src', 'guide'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.md'))
  .map((name) => `src/guide/${name.replaceAll('\\', '/')}`);
const pages = [...guide, 'README.md', 'DEVELOPERS.md', 'CHANGELOG.md', 'test/collection/README.md'];

/** Without what stands in code, where brackets mean something else. */
function prose(file: string): string {
  return readFileSync(join(root, file), 'utf8')
    .replaceAll(/^ *```[^]*?^ *```$/gm, '')
    .replaceAll(/`[^`]*`/g, (code) => code.replaceAll(/[[\]()]/g, '_'));
}

/** Of links and pictures, written in place or below. */
function targetsOf(file: string): string[] {
  const text = prose(file);
  const inPlace = [...text.matchAll(/\]\(([^)\s]+)\)/g)].map(([, target]) => target!);
  const below = [...text.matchAll(/^\[[^\]]+\]: (\S+)$/gm)].map(([, target]) => target!);
  return [...inPlace, ...below];
}

/** References such as [DEVELOPERS.md] and [the guide][index], which need a line below that says where they lead. */
function unknownReferences(file: string): string[] {
  const text = prose(file);
  const known = [...text.matchAll(/^\[([^\]]+)\]: /gm)].map(([, name]) => name!.toLowerCase());
  const used = [...text.matchAll(/(?:\[[^\]]*\])?\[([^\]]+)\](?![(:[])/g)].map(([, name]) =>
    name!.replaceAll(/\s+/g, ' '),
  );
  return used.filter((name) => !known.includes(name.toLowerCase()));
}

/** As the editor's preview and most hosts of repositories make them of headings: letters, figures and hyphens. */
function anchorsOf(file: string): string[] {
  return [...readFileSync(join(root, file), 'utf8').matchAll(/^#+ (.*)$/gm)].map(([, heading]) =>
    heading!
      .toLowerCase()
      .replaceAll(/[^\p{L}\p{N}\s_-]/gu, '')
      .replaceAll(/\s/g, '-'),
  );
}

const isElsewhere = (target: string): boolean => /^(https:|command:)/.test(target);

describe('The pages', () => {
  it('are many, and have links', () => {
    assert.ok(guide.length > 55, String(guide.length));
    assert.ok(pages.flatMap(targetsOf).length > 120);
  });

  for (const file of pages)
    it(`of ${file} lead to what there is`, () => {
      assert.deepEqual(unknownReferences(file), []);
      for (const target of targetsOf(file).filter((each) => !isElsewhere(each))) {
        const [to = '', anchor] = target.split('#');
        const path = to === '' ? file : join(dirname(file), to);
        assert.ok(existsSync(join(root, path)), target);
        if (anchor !== undefined) assert.ok(anchorsOf(path).includes(anchor), target);
      }
    });

  it('of the guide keep within what is packed, at the same place beside them', () => {
    for (const file of guide)
      for (const target of targetsOf(file).filter((each) => !isElsewhere(each))) {
        const path = relative(join(root, 'src', 'guide'), join(root, dirname(file), target.split('#')[0]!));
        assert.ok(!path.startsWith('..'), `${file}: ${target}`);
      }
  });

  // The editor's preview shows pictures of the page's own folder and below.
  it('of the guide have their pictures beside them or below', () => {
    const pictures = guide.flatMap((file) =>
      [...prose(file).matchAll(/!\[([^\]]*)\]\(([^)\s]+)\)/g)].map(([, words, target]) => ({ file, words, target })),
    );
    assert.ok(pictures.length > 5);
    for (const { file, words, target } of pictures) {
      assert.ok(!target!.startsWith('..'), `${file}: ${target}`);
      assert.ok(words!.length > 20, `${file}: ${target} says nothing to those who cannot see it`);
    }
  });

  it('of the guide are all reached from its first page', () => {
    const reached = new Set(['src/guide/index.md']);
    for (const file of reached)
      for (const target of targetsOf(file).filter((each) => !isElsewhere(each) && /\.md(#|$)/.test(each)))
        reached.add(join(dirname(file), target.split('#')[0]!).replaceAll('\\', '/'));
    assert.deepEqual(
      guide.filter((file) => !reached.has(file)),
      [],
    );
  });
});
