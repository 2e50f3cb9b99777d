import assert from 'node:assert/strict';
import { boundsOf } from '../../../src/geometry/measure.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import { bareStemsOf } from '../../../src/tag/hanger/bare-stems.ts';
import { onHeads } from '../../../src/tag/hanger/on-head.ts';
import { isTurnedByNeck } from '../../../src/tag/hanger/turned-by-neck.ts';
import { make, specOf } from '../support/engine.ts';

const outline = (...points: readonly (readonly [number, number])[]): Region => [points.map(([x, y]) => ({ x, y }))];

/** 20 high, with strokes 3 wide. */
const letters: Readonly<Record<string, Region>> = {
  l: outline([0, 0], [3, 0], [3, 20], [0, 20]),
  L: outline([0, 0], [12, 0], [12, 3], [3, 3], [3, 20], [0, 20]),
  T: outline([5, 0], [8, 0], [8, 17], [13, 17], [13, 20], [0, 20], [0, 17], [5, 17]),
  U: outline([0, 0], [13, 0], [13, 20], [10, 20], [10, 3], [3, 3], [3, 20], [0, 20]),
  t: outline([3, 0], [6, 0], [6, 11], [9, 11], [9, 14], [6, 14], [6, 20], [3, 20], [3, 14], [0, 14], [0, 11], [3, 11]),
  h: outline([0, 0], [3, 0], [3, 10], [8, 10], [8, 0], [11, 0], [11, 13], [3, 13], [3, 20], [0, 20]),
  O: [outline([0, 0], [13, 0], [13, 20], [0, 20])[0]!, outline([3, 3], [3, 17], [10, 17], [10, 3])[0]!],
};

const radius = 3;

/** Of letters side by side, each so far from the one before. */
function on(text: string, at: Point, apart = 3): readonly string[] {
  let left = 0;
  const line = text.split('').map((letter) => {
    const region = letters[letter]!.map((ring) => ring.map(({ x, y }) => ({ x: x + left, y })));
    const box = boundsOf(region)!;
    left = box.maxX + apart;
    return { text: letter, region, box };
  });
  return onHeads(line, at, radius, 1.5, () => false);
}

describe('A ring on the head of a letter', () => {
  it('is the dot of an “i” on the end of a stem that is bare over 0.55 of its height', () => {
    assert.deepEqual(on('l', { x: 1.5, y: 21.5 }), ['dotted stem']);
    // Above the bowl of an h it is bare over a third.
    assert.deepEqual(on('h', { x: 1.5, y: 21.5 }), []);
    for (const x of [1.5, 11.5]) assert.ok(on('U', { x, y: 21.5 }).includes('dotted stem'), `${x}`);
  });

  it('is none on a first L, whose foot is all else of it, nor on a T', () => {
    assert.deepEqual(on('L', { x: 1.5, y: 21.5 }), []);
    assert.deepEqual(on('LL', { x: 19.5, y: 21.5 }, 6), ['dotted stem']);
    assert.deepEqual(on('T', { x: 6.5, y: 21.5 }), []);
    assert.deepEqual(on('O', { x: 1.5, y: 21.5 }), []);
  });

  it('is none at the outer corner of the first letter or of the last, but on a letter that is a stem alone', () => {
    assert.deepEqual(on('Ul', { x: 0.4, y: 21.5 }), []);
    assert.deepEqual(on('lU', { x: 18.6, y: 21.5 }), []);
    assert.deepEqual(on('lU', { x: 17.5, y: 21.5 }), ['dotted stem']);
    assert.deepEqual(on('lU', { x: 0.4, y: 21.5 }), ['dotted stem']);
  });

  it('makes an “i” of a t, which is bare above its bar', () => {
    assert.deepEqual(on('lt', { x: 10.5, y: 21.5 }), ['dotted stem']);
  });

  it('is none beside the stem, nor far above it', () => {
    for (const [x, y] of [
      [4.2, 21.5],
      [1.5, 25],
      [1.5, 19],
    ] as const)
      assert.deepEqual(on('l', { x, y }), [], `${x}, ${y}`);
    for (const [x, y] of [
      [3.8, 21.5],
      [1.5, 24],
      [1.5, 19.5],
    ] as const)
      assert.deepEqual(on('l', { x, y }), ['dotted stem'], `${x}, ${y}`);
  });

  it('joins the heads of two letters that both end within it, one on either side', () => {
    assert.ok(on('ll', { x: 4.5, y: 21 }).includes('heads'));
    assert.ok(on('lh', { x: 4.5, y: 21 }).includes('heads'));
    assert.ok(!on('ll', { x: 1.5, y: 21 }).includes('heads'));
    assert.ok(!on('ll', { x: 8, y: 21 }, 10).includes('heads'));
  });

  it('is the ring of an Å over the apex, far to the right where the A leans', () => {
    const region = outline([0, 0], [3, 0], [6, 6], [12, 6], [12, 0], [15, 0], [15, 20], [12, 20]);
    const rings = (x: number): boolean =>
      onHeads([{ text: 'A', region, box: boundsOf(region)! }], { x, y: 21 }, radius, 1.5, () => false).includes(
        'ringed',
      );
    assert.ok(rings(13.5));
    assert.ok(!rings(18));
    assert.ok(!rings(1));
  });

  it('is seen in any size', () => {
    const grown = letters.l!.map((ring) => ring.map(({ x, y }) => ({ x: 3 * x, y: 3 * y })));
    assert.equal(bareStemsOf(grown).length, bareStemsOf(letters.l!).length);
  });
});

async function hung(text: string, at: string, more = '') {
  const shape = `body: {text: ${text}, font: Nunito, weight: 800, x_height: 11, overlap: auto${more}}`;
  const head = ['stock: {material: birch plywood, thickness: 3, kerf: 0.16}', 'tie: {twine: 1.5}'];
  const { pieces, issues } = await make(specOf([shape], `body: [body], hanger: {ring: {at: ${at}}}`, head));
  const { readAs = [], centre } = pieces[0]!.hangers[0]!;
  return { readAs, centre, said: issues.filter(({ code }) => code === 'hole-blocked').map(({ message }) => message) };
}

describe('A ring that finds its place among heads', () => {
  it('joins no two of them and dots no stem where another place is as good', async () => {
    for (const text of ['Ella', 'Willem', 'Nelly', 'Al']) {
      const { readAs } = await hung(text, 'auto');
      for (const each of ['heads', 'dotted stem', 'ringed'] as const)
        assert.ok(!readAs.includes(each), `${text}: ${each}`);
    }
  });

  it('may join those of capitals, which are read all the same: an “o” before them is not', async () => {
    for (const text of ['ANNA', 'MINT']) assert.ok(!(await hung(text, 'auto')).readAs.includes('letter'), text);
  });

  it('says so where it must', async () => {
    const { readAs, said } = await hung('Ill', 'top');
    assert.ok(readAs.includes('dotted stem') || readAs.includes('heads'), readAs.join());
    assert.match(
      said[0]!,
      /^The ring stands on (the end of a bare stem and reads as the dot of an “i”|the heads of two letters and joins them to one)\.$/,
    );
  });
});

describe('The neck of a ring', () => {
  it('makes another letter of all but those that it is an accent of', () => {
    for (const letter of ['o', 'p', 'a', 'n', 's', 'm', 'I']) assert.ok(isTurnedByNeck(letter), letter);
    for (const letter of ['e', 'é', 'c', 'r']) assert.ok(!isTurnedByNeck(letter), letter);
  });

  it('is said where it does', async () => {
    const { readAs, said } = await hung('Vroni', 'top');
    assert.deepEqual(readAs, ['neck']);
    assert.match(said[0]!, /on a neck, which makes another letter of the one below it/);
  });
});

describe('A ring beside the first letter', () => {
  it('is the bowl of a “d” with a bare capital though it is smaller than one: IDIL', async () => {
    const { readAs } = await hung('IDIL', 'left');
    assert.ok(readAs.includes('d') || readAs.includes('9'), readAs.join());
  });
});
