/** What the guide takes from the code is what the code says today; `npm run generate` writes it. */

import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { keysTable, problemsTable, settingsTable, wayOn } from '../../../src/dev/guide-tables.ts';
import { languageReference } from '../../../src/dev/language-reference.ts';
import { markdownTable, withTable } from '../../../src/dev/markdown-table.ts';
import { issueCodes, issueKinds } from '../../../src/core/issue-kinds.ts';
import { specSchema } from '../../../src/language/schema.ts';

const root = join(import.meta.dirname, '..', '..', '..');
const page = (name: string): string => readFileSync(join(root, 'src', 'guide', `${name}.md`), 'utf8');

describe('The tables of the guide', () => {
  it('list every kind of problem once, as the table of codes has it, with its page', () => {
    const rows = [...page('problems').matchAll(/^\| \[`([a-z-]+)`\]\((\S+)\) *\| (\w+) *\| (.*?) *\|$/gm)];
    assert.deepEqual(rows.map(([, code = '']) => code).sort(), [...issueCodes].sort());
    for (const [, code = '', target, severity, summary] of rows) {
      const kind = issueKinds[code as keyof typeof issueKinds];
      assert.deepEqual([target, severity, summary], [`problems/${code}.md`, kind.severity, kind.summary]);
    }
  });

  for (const [name, table] of [
    ['problems', problemsTable()],
    ['settings', settingsTable(root)],
    ['preview', keysTable()],
  ] as const)
    it(`are today's on the page ${name}`, () => {
      assert.ok(table.rows.length > 3);
      assert.equal(withTable(page(name), table), page(name));
    });

  it("lead on from each problem's page", () => {
    for (const file of readdirSync(join(root, 'src', 'guide', 'problems')))
      assert.ok(page(`problems/${file.slice(0, -3)}`).endsWith(`\n\n${wayOn}`), file);
  });

  it('are refused to a page that has no such table', () => {
    assert.throws(() => withTable('# Settings\n\n| other | columns |\n', settingsTable(root)));
  });

  it('keep a bar within a cell', () => {
    assert.equal(markdownTable({ header: ['a'], rows: [['|x|']] }), '| a     |\n| ----- |\n| \\|x\\| |');
  });
});

describe("The guide's reference of the language", () => {
  const reference = page('reference');

  it("is today's", () => {
    assert.equal(reference, languageReference());
  });

  it('tells what all hangers take once, and of each what it has of its own', () => {
    const rowsIn = (name: string) => {
      const [, section] = reference.split(`\n## \`${name}\`\n`);
      return [...section!.split('\n## ')[0]!.matchAll(/^\| `(\w+)`/gm)].map(([, key]) => key);
    };
    assert.deepEqual(rowsIn('hanger'), ['ring', 'hole', 'slot', 'keyhole', 'on', 'at', 'count', 'spacing', 'nudge']);
    assert.deepEqual(rowsIn('ring'), ['diameter', 'wall', 'sink']);
    assert.deepEqual(rowsIn('hole'), ['diameter', 'inset']);
    assert.deepEqual(rowsIn('keyhole'), ['diameter', 'width', 'length', 'inset']);
    assert.match(reference, /Default: `top`\. Of a ring: `auto`\./);
  });

  it('has a row for every key of the schema', () => {
    const keys = new Set<string>();
    const collect = (node: unknown): void => {
      if (typeof node !== 'object' || node === null) return;
      for (const [name, inner] of Object.entries(node)) {
        if (name === 'properties') for (const key of Object.keys(inner as object)) keys.add(key);
        if (name !== 'examples' && name !== 'default') collect(inner);
      }
    };
    collect(specSchema);
    assert.ok(keys.size > 90, String(keys.size));
    for (const key of keys) assert.match(reference, new RegExp(`^\\| (\\*\\*)?\`${key}\``, 'm'), key);
  });

  it('has each key of a shape in one of its three tables', () => {
    const shape = /^## `shape`$[^]*?(?=^## )/m.exec(reference)![0];
    const rows = [...shape.matchAll(/^\| `(\w+)` \|/gm)].map(([, key = '']) => key);
    assert.deepEqual(rows.sort(), Object.keys(specSchema.definitions!['shape']!.properties!).sort());
    assert.equal([...shape.matchAll(/^### /gm)].length, 3);
  });
});
