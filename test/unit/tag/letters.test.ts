import assert from 'node:assert/strict';
import { difference, offset, union } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, perimeter } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import type { Lettering } from '../../../src/tag/lettering/letters.ts';
import { assertNear, make, specOf } from '../support/engine.ts';

/** All the lettering of the first piece, through its sources and its marks. */
async function letteringOf(shapes: readonly string[], piece: string): Promise<readonly Lettering[]> {
  const { pieces } = await make(specOf(shapes, piece));
  return [...pieces[0]!.sources, ...pieces[0]!.marks].flatMap(({ lettering = [] }) => lettering);
}

const united = ({ letters }: Lettering): Region => union([letters.flatMap(({ region }) => region)]);

/** What is in one of the two only, in mm². */
const apart = (a: Region, b: Region): number => area(difference(a, [b])) + area(difference(b, [a]));

/** Each of the two within the tolerance of flattened curves, 0.002 mm. */
const areSame = (a: Region, b: Region): boolean => apart(a, b) < 0.002 * perimeter(b);

const name = 'name: {text: "Zoë fix", font: Nunito, weight: 700, x_height: 9';

describe('Letters as the font draws them', () => {
  it('are told one by one, marks with their letter, ligatures as one, spaces left out', async () => {
    const [lettering] = await letteringOf([`${name}}`], 'body: [name], parts: many');
    assert.deepEqual(
      lettering!.letters.map(({ text }) => text),
      ['Z', 'o', 'ë', 'fi', 'x'],
    );
    assertNear(lettering!.xHeight, 9, 1e-9);
    assert.deepEqual(lettering!.path, ['shapes', 'name']);
    // The bowl and both dots.
    assert.equal(lettering!.letters[2]!.region.length, 4);
  });

  it('stand where their shape stands, however it was moved, turned, mirrored and sized', async () => {
    const moves = [
      '}',
      ', rotate: 30, mirror: left-right, nudge: {up: 7}}',
      ', place: {on: plate, at: top-left, margin: 3}}',
    ];
    for (const move of moves) {
      const { pieces } = await make(
        specOf(['plate: {rectangle: [90, 40]}', name + move], 'body: [plate], cut: [name]'),
      );
      const [source] = pieces[0]!.sources.filter(({ use }) => use === 'cut');
      assert.ok(areSame(united(source!.lettering![0]!), source!.region), move);
    }
  });

  it('stand in a piece that is scaled as a whole as they do in its body', async () => {
    const { pieces } = await make(specOf([`${name}}`], 'body: [name], parts: many, width: 120'));
    const [source] = pieces[0]!.sources;
    assert.ok(areSame(united(source!.lettering![0]!), source!.region));
    assert.ok(source!.lettering![0]!.xHeight > 12);
  });

  it('stand on a circle as their shape does', async () => {
    const { pieces } = await make(specOf([`${name}, arc: {radius: 40}}`], 'body: [name], parts: many'));
    const [source] = pieces[0]!.sources;
    assert.equal(source!.lettering![0]!.letters.length, 5);
    assert.ok(areSame(united(source!.lettering![0]!), source!.region));
  });

  it('keep their own weight when their shape is grown, and know by how much', async () => {
    for (const shapes of [
      [`${name}, grow: 0.5}`],
      [`${name.replace('name', 'own')}}`, 'name: {from: own, grow: 0.5}'],
    ]) {
      const { pieces } = await make(specOf(shapes, 'body: [name], parts: many'));
      const [source] = pieces[0]!.sources;
      const [lettering] = source!.lettering!;
      assert.equal(lettering!.grow, 0.5);
      assert.equal(lettering!.shape, undefined, 'the shape is nothing else');
      assert.ok(areSame(offset(united(lettering!), 0.5), source!.region));
    }
  });

  it('go into what their shape is a member of, with what it was by itself', async () => {
    const plate = 'plate: {rectangle: [90, 40]}';
    const members = [
      'body: {union: [plate, name]}',
      'body: {difference: [plate, name]}',
      'body: {intersection: [plate, name]}',
      'body: {stack: {shapes: [plate, name]}}',
      'body: {from: inner, grow: 0.2}',
    ];
    for (const member of members) {
      const shapes = [plate, `${name}, grow: 0.3}`, 'inner: {union: [plate, name]}', member];
      const [lettering] = await letteringOf(shapes, 'body: [body], parts: many');
      assert.ok(lettering, member);
      const grown = offset(united(lettering), lettering.grow);
      assert.ok(apart(grown, lettering.shape!) < 0.1, member);
      assert.equal(lettering.as, member.includes('difference') ? 'opening' : 'material');
    }
  });

  it('stand in a stack where it has put them', async () => {
    const shapes = ['plate: {rectangle: [90, 40]}', `${name}}`, 'body: {stack: {shapes: [plate, name], lap: 1}}'];
    const [lettering] = await letteringOf(shapes, 'body: [body], parts: many');
    const { minY, maxY } = boundsOf(united(lettering!))!;
    const { pieces } = await make(specOf(shapes, 'body: [body], parts: many'));
    assertNear(minY, boundsOf(pieces[0]!.region)!.minY, 1e-3);
    assertNear(maxY, boundsOf(pieces[0]!.region)!.maxY - 40 + 1, 1e-3);
  });

  it('are not in a backing that goes round them', async () => {
    const shapes = [`${name}}`, 'plate: {around: name, by: 4}'];
    assert.deepEqual(await letteringOf(shapes, 'body: [plate]'), []);
    assert.equal((await letteringOf(shapes, 'body: [plate], engrave: [name]')).length, 1);
  });
});
