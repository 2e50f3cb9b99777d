/** Where a page says that something is, there it is. */

import assert from 'node:assert/strict';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..', '..', '..');
const design = readdirSync(join(root, 'src', 'guide', 'design')).map((name) => `src/guide/design/${name}`);
/** What paths are written from, in pages for developers. */
const bases = ['', 'src', 'src/tag', 'src/geometry', 'src/nesting', 'src/vscode', 'test', 'test/editor'];

/** In code: `geometry/necks.ts`, `tag/overlap/`, `test/unit/architecture.test.ts`. */
function pathsIn(text: string): string[] {
  return [...text.matchAll(/`([a-z][\w.-]*\/[\w./-]*)`/g)].map(([, path]) => path!);
}

describe('The files that pages for developers name', () => {
  for (const page of ['DEVELOPERS.md', ...design])
    it(`are there: ${page}`, () => {
      const missing = pathsIn(readFileSync(join(root, page), 'utf8')).filter(
        // Not in git, but made by a build, a run of tests or a first start.
        (path) =>
          !/^(dist|test\/(editor\/tools|artefacts))\/|CODE/.test(path) &&
          !bases.some((base) => existsSync(join(root, base, path))),
      );
      assert.deepEqual(missing, []);
    });

  it('are many', () => {
    assert.ok(
      ['DEVELOPERS.md', ...design].flatMap((page) => pathsIn(readFileSync(join(root, page), 'utf8'))).length > 60,
    );
  });
});

describe('The index of DEVELOPERS.md', () => {
  it('answers ten questions, each with a file', () => {
    const text = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
    const section = /^## Where is it\?$[^]*?(?=^## )/m.exec(text)![0];
    const rows = [...section.matchAll(/^\| (.*\?) \| (.*) \|$/gm)];
    assert.equal(rows.length, 10);
    for (const [, question, answer] of rows) assert.match(answer!, /`[\w-]+\/[^`]*`/, question);
  });
});
