import assert from 'node:assert/strict';
import { completionsAt } from '../../../src/language/completion/complete.ts';
import { hoverAt } from '../../../src/language/hover/hover.ts';
import { noWorkspaceNames } from '../../../src/language/workspace-names.ts';
import { readShared } from '../../../src/spec/parse.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { newEngine, report } from '../support/engine.ts';

const shop = `tagwright: 1
stocks:
  ply3: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm, measured_on: {kerf: 2026-03-14}}
  hostile: {material: "<img src=x>[a](b)"}
ties:
  jute: {twine: 2 mm}
`;

const text = `tagwright: 1
use: shop.workshop.yaml
stock: ply3
tie: jute
shapes:
  plate: {rectangle: [60, 30]}
pieces:
  tag: {body: [plate]}
`;

const beside = { 'shop.workshop.yaml': shop };

describe('The stocks and ties of a workshop file', () => {
  it('are offered where one is chosen, with what they are', async () => {
    const { uses } = await report(text, newEngine(beside));
    const offered = (before: string) =>
      completionsAt(text.replace(before, before.replace(/\S+$/, '')), text.indexOf(before) + before.search(/\S+$/), {
        ...noWorkspaceNames,
        uses,
      });
    const stocks = offered('stock: ply3').filter(({ label }) => label === 'ply3' || label === 'hostile');
    assert.deepEqual(
      stocks.map(({ label, detail }) => [label, detail]),
      [
        ['ply3', 'birch plywood, 3 mm'],
        ['hostile', '<img src=x>[a](b)'],
      ],
    );
    assert.deepEqual(
      offered('tie: jute').flatMap(({ label, detail }) => (label === 'jute' ? [detail] : [])),
      ['twine 2 mm'],
    );
  });

  it('say what they are under the pointer, with days, and markup of theirs is text', async () => {
    const made = await report(text, newEngine(beside));
    const hover = (spec: string, word: string) => {
      const source = new SpecSource(spec);
      return hoverAt(source, spec.indexOf(word) + 1, made, [])?.markdown ?? '';
    };
    assert.match(
      hover(text, 'ply3'),
      /\*\*ply3\*\*\n\n- material: birch plywood\n.*\n- kerf: 0\\\.16 mm, measured on 2026\\-03\\-14/,
    );
    const other = text.replace('ply3', 'hostile');
    assert.doesNotMatch(hover(other, 'hostile'), /<img|\[a\]\(b\)/);
  });

  it('are found wrong at their place in their own file, which needs no pieces', async () => {
    const broken = shop.replace('0.16 mm', '-1 mm');
    const made = await report(text, newEngine({ 'shop.workshop.yaml': broken }));
    assert.equal(made.tag, undefined);
    const [{ file, source, issues }] = made.inUsed as [NonNullable<typeof made.inUsed>[number]];
    assert.equal(file, '/specs/shop.workshop.yaml');
    assert.deepEqual(
      issues.map(({ message, range }) => [message, source.position(range.start)]),
      [['“kerf” cannot be less than 0.', { line: 3, column: broken.split('\n')[2]!.indexOf('-1 mm') + 1 }]],
    );
    assert.deepEqual(
      readShared(new SpecSource(broken)).map(({ message }) => message),
      ['“kerf” cannot be less than 0.'],
    );
    assert.deepEqual(readShared(new SpecSource(shop)), []);
    assert.match(readShared(new SpecSource('tagwright: 1\nstocks: {'))[0]!.code, /yaml-syntax/);
    assert.match(readShared(new SpecSource('- 1'))[0]!.code, /not-a-spec/);
  });
});
