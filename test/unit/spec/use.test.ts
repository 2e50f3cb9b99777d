import assert from 'node:assert/strict';
import { area } from '../../../src/geometry/measure.ts';
import { newEngine, placeOf, report } from '../support/engine.ts';
import type { Beside } from '../support/engine.ts';

const house = `tagwright: 1
units: in
stocks:
  ply: {material: birch plywood, thickness: 1/8 in, kerf: 0.16 mm, min_web: 2 mm}
ties:
  thin: {twine: 1.5 mm}
tie: thin
hangers:
  side: {ring: {at: left}}
shapes:
  plate: {rectangle: [2, 1], radius: 1/4}
  leaf: {drawing: art/leaf.svg}
`;

const spec = `tagwright: 1
use: house.yaml
stock: ply
pieces:
  tag: {body: [plate], hanger: side}
`;

const leaf =
  '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm" viewBox="0 0 10 10"><path d="M0 0H10V10Z"/></svg>';

const files: Beside = { 'house.yaml': house, 'art/leaf.svg': leaf };

const messagesOf = async (text: string, beside: Beside) => {
  const made = await report(text, newEngine(beside));
  return made.issues.map((issue) => `${issue.code} “${placeOf(made, issue).text}”: ${issue.message}`);
};

describe('A file that a spec uses', () => {
  it('brings stocks, ties, hangers and shapes, each in its own unit', async () => {
    const made = await report(spec, newEngine(files));
    assert.deepEqual(made.issues, []);
    assert.equal(made.tag!.stock.thickness, 25.4 / 8);
    assert.equal(made.tag!.stock.minWeb, 2);
    assert.deepEqual(made.tag!.tie, { kind: 'twine', size: 1.5 });
    const [tag] = made.tag!.pieces;
    assert.equal(tag!.hangers.length, 1);
    // Exact: a rounded rectangle, a·b − (4 − π)·r²; flattening takes a little off.
    const expected = 50.8 * 25.4 - (4 - Math.PI) * 6.35 ** 2;
    assert.ok(Math.abs(area(tag!.body) - expected) < 0.1);
    assert.equal(made.tag!.units, 'mm', 'the units of a file are its own');
    assert.deepEqual(made.files, ['/specs/house.yaml', '/specs/art/leaf.svg']);
  });

  it('is overruled by the spec’s own stock and tie', async () => {
    const own = spec.replace('stock: ply', 'stock: {min_web: 5}\ntie: {ribbon: 6}');
    const made = await report(own, newEngine(files));
    assert.equal(made.tag!.stock.minWeb, 5);
    assert.deepEqual(made.tag!.tie, { kind: 'ribbon', size: 6 });
  });

  it('may lie in another folder and use others, whose paths are seen from theirs', async () => {
    const deep: Beside = {
      'styles/base.yaml': house.replace('art/leaf.svg', '../art/leaf.svg'),
      'styles/house.yaml': 'tagwright: 1\nuse: [./base.yaml]\nshapes: {badge: {from: plate, grow: -2 mm}}\n',
      'styles/../art/leaf.svg': leaf,
    };
    const text = spec.replace('house.yaml', 'styles/house.yaml').replace('[plate]', '[badge, leaf]');
    const made = await report(text, newEngine(deep));
    assert.ok(
      !made.issues.some(({ severity, code }) => severity === 'error' && code !== 'loose-part'),
      JSON.stringify(made.issues),
    );
    assert.deepEqual(made.files, [
      '/specs/styles/house.yaml',
      '/specs/styles/base.yaml',
      '/specs/styles/../art/leaf.svg',
    ]);
  });

  it('has its problems told at the place that uses it, with its name and line', async () => {
    const broken = house
      .replace('rectangle: [2, 1]', 'rectangle: [2, -1]')
      .replace('side: {ring: {at: left}}', 'side: {ring: {at: left, wal: 2}}');
    const messages = await messagesOf(spec, { ...files, 'house.yaml': broken });
    assert.ok(
      messages.some((line) => /^bad-length “house.yaml”: house.yaml, line 11: /.test(line)),
      messages.join('\n'),
    );
    assert.ok(
      messages.some((line) => /^unknown-key “house.yaml”: house.yaml, line 9: .*wall/.test(line)),
      messages.join('\n'),
    );
    assert.match(
      (await messagesOf(spec, { ...files, 'house.yaml': 'tagwright: 1\nshapes: {' })).join('\n'),
      /^yaml-syntax “house.yaml”: house.yaml, line 2/m,
    );
  });

  it('has what is weak about its shapes told there as well, and nothing is offered that would change it', async () => {
    const thin = house.replace('plate: {rectangle: [2, 1], radius: 1/4}', 'plate: {rectangle: [2, 0.7 mm]}');
    const messages = await messagesOf(spec, { ...files, 'house.yaml': thin });
    assert.ok(
      messages.some((line) => line.startsWith('thin-stroke “house.yaml”')),
      messages.join('\n'),
    );
  });

  it('that is missing, uses itself, or may not be read is told where it is used', async () => {
    assert.match((await messagesOf(spec, {})).join(), /^bad-file “house.yaml”: “house.yaml” cannot be found or read/);
    const round: Beside = { 'a.yaml': 'tagwright: 1\nuse: b.yaml\n', 'b.yaml': 'tagwright: 1\nuse: a.yaml\n' };
    const text = 'tagwright: 1\nuse: a.yaml\nshapes: {p: {ellipse: 9}}\npieces: {t: {body: [p]}}\n';
    assert.deepEqual(await messagesOf(text, round), [
      'cycle “a.yaml”: “a.yaml” uses itself: a.yaml → b.yaml → a.yaml.',
    ]);
    const apart = await newEngine(files).compute(spec, { locate: () => undefined });
    assert.match(apart.issues[0]!.message, /not inside the spec/);
  });

  it('and another that define the same name clash, at the name or at the second file', async () => {
    const own = spec.replace('pieces:', 'shapes: {plate: {ellipse: 30}}\npieces:');
    assert.deepEqual(await messagesOf(own, files), [
      'name-clash “plate”: There is also a shape “plate” in house.yaml.',
    ]);
    const two = spec.replace('use: house.yaml', 'use: [house.yaml, other.yaml]');
    const other = 'tagwright: 1\nhangers: {side: {hole: {}}}\n';
    assert.deepEqual(await messagesOf(two, { ...files, 'other.yaml': other }), [
      'name-clash “other.yaml”: There is a hanger “side” in both house.yaml and other.yaml.',
    ]);
    const ties = await messagesOf(two, { ...files, 'other.yaml': 'tagwright: 1\ntie: {twine: 3}\n' });
    assert.match(ties.join(), /name-clash .*Several of the used files set “tie”/);
  });

  it('may be used by two others without a clash', async () => {
    const text = spec.replace('use: house.yaml', 'use: [one.yaml, two.yaml]');
    const shared: Beside = {
      ...files,
      'one.yaml': 'tagwright: 1\nuse: house.yaml\n',
      'two.yaml': 'tagwright: 1\nuse: house.yaml\n',
    };
    assert.deepEqual(await messagesOf(text, shared), []);
  });

  it('has names that are suggested for one that is not known', async () => {
    assert.match(
      (await messagesOf(spec.replace('stock: ply', 'stock: plly'), files)).join(),
      /unknown-name “plly”: There is no stock “plly”. Did you mean “ply”/,
    );
    assert.match(
      (await messagesOf(spec.replace('hanger: side', 'hanger: sied'), files)).join(),
      /unknown-hanger .*Did you mean “side”/,
    );
    assert.match(
      (await messagesOf(spec.replace('[plate]', '[plat]'), files)).join(),
      /unknown-shape .*Did you mean “plate”/,
    );
  });

  it('changes the tag when it changes', async () => {
    const beside: Record<string, string> = { 'house.yaml': house, 'art/leaf.svg': leaf };
    const engine = newEngine(beside);
    const width = async () => {
      const ring = (await report(spec, engine)).tag!.pieces[0]!.body[0]!;
      return Math.max(...ring.map(({ x }) => x)) - Math.min(...ring.map(({ x }) => x));
    };
    assert.ok(Math.abs((await width()) - 50.8) < 1e-3);
    beside['house.yaml'] = house.replace('[2, 1]', '[3, 1]');
    assert.ok(Math.abs((await width()) - 76.2) < 1e-3);
  });

  it('cannot make the reader run away', async () => {
    const many: Record<string, string> = {};
    for (let i = 0; i < 60; i += 1)
      many[`f${i}.yaml`] =
        `tagwright: 1\nuse: [${Array.from({ length: 20 }, (_, j) => `f${(i + j + 1) % 60}.yaml`).join(', ')}]\n`;
    const text = 'tagwright: 1\nuse: f0.yaml\nshapes: {p: {ellipse: 9}}\npieces: {t: {body: [p]}}\n';
    const messages = await messagesOf(text, many);
    assert.ok(messages.some((line) => /More than 50 files/.test(line)));
  });
});
