import assert from 'node:assert/strict';
import { fusedMarks } from '../../../src/checks/measures/fused-marks.ts';
import type { Region } from '../../../src/geometry/types.ts';
import type { Letter } from '../../../src/tag/lettering/letters.ts';

function block(left: number, bottom: number, width: number, height: number): Region {
  const [right, top] = [left + width, bottom + height];
  return [
    [
      { x: left, y: bottom },
      { x: right, y: bottom },
      { x: right, y: top },
      { x: left, y: top },
    ],
  ];
}

/** An i 2 mm wide whose dot is 3 mm wide, and an l beside it; `gap` from the dot to the l. */
const dotted = [...block(0, 0, 2, 10), ...block(0, 12, 3, 3)];
const stem = (gap: number) => block(3 + gap, 0, 2, 16);
const pair = (made: number, set: number): Letter[] => [
  { text: 'i', region: dotted, asSet: dotted },
  { text: 'l', region: stem(made), asSet: stem(set) },
];
const wide = { xHeight: 10, reach: 0.5 };

describe('A dot that runs into the next letter', () => {
  it('is one that comes nearer than the beam leaves open, on either side of that', () => {
    assert.deepEqual(fusedMarks(pair(0.49, 2), wide), { drawn: 1, fused: 1 });
    assert.deepEqual(fusedMarks(pair(0.51, 2), wide), { drawn: 1, fused: 0 });
  });

  it('is one that touches, whatever the beam', () => {
    assert.equal(fusedMarks(pair(0.04, 2), { xHeight: 10, reach: 0 }).fused, 1);
    assert.equal(fusedMarks(pair(0.06, 2), { xHeight: 10, reach: 0 }).fused, 0);
  });

  it('is none where the font has the two touch, and one where it keeps them apart by a hair', () => {
    assert.equal(fusedMarks(pair(0.1, 0.049), wide).fused, 0);
    assert.equal(fusedMarks(pair(0.1, 0.051), wide).fused, 1);
  });

  it('is none of a letter without one, which the face of a stencil cuts into parts', () => {
    const [i, l] = pair(0.1, 2);
    for (const text of ['e', 'N', 'ж', '7'])
      assert.deepEqual(fusedMarks([{ ...i!, text }, l!], wide), { drawn: 0, fused: 0 });
    for (const text of ['j', 'é', 'й', 'і', 'ب', ':']) assert.equal(fusedMarks([{ ...i!, text }, l!], wide).fused, 1);
  });

  it('is looked for only where letters were moved', () => {
    const [i, l] = pair(0.1, 2);
    assert.deepEqual(fusedMarks([{ text: 'i', region: i!.region }, l!], wide), { drawn: 0, fused: 0 });
  });

  it('is none by which its letter hangs, with no more than a quarter of it in the letter that holds it', () => {
    const hung = (into: number): Letter[] => {
      const [i, l] = pair(-into, 2);
      return [{ ...i!, heldByMark: true }, l!];
    };
    // A dot 3 mm wide: a quarter is 0.75 mm, of which the beam takes half a millimetre.
    assert.equal(fusedMarks(hung(0.74), { xHeight: 10, reach: 0 }).fused, 0);
    assert.equal(fusedMarks(hung(0.76), { xHeight: 10, reach: 0 }).fused, 1);
    assert.equal(fusedMarks(hung(0.24), wide).fused, 0);
    assert.equal(fusedMarks(hung(0.26), wide).fused, 1);
  });

  it('is no mark that touches its own letter', () => {
    const joined = [...block(0, 0, 2, 15)];
    assert.equal(fusedMarks([{ text: 'l', region: joined, asSet: joined }, pair(-0.5, 2)[1]!], wide).drawn, 0);
  });
});

describe('An apostrophe that runs into a letter', () => {
  /** The sign reaches from 8 to 14; the letter beside it from 0 to `top`. */
  const beside = (gap: number, top: number, more: Region = []): Letter[] => {
    const letter = (from: number): Region => [...block(2 + from, 0, 2, top), ...more];
    return [
      { text: '’', region: block(0, 8, 2, 6), asSet: block(0, 8, 2, 6) },
      { text: 'n', region: letter(gap), asSet: letter(gap + 2) },
    ];
  };

  it('is one of which more than a quarter is in the letter as large as the beam leaves it', () => {
    // 2 × 6 mm of sign, of which the letter up to 10.25 takes x × 2.25 mm: a quarter, 3 mm², at x = 4/3.
    const tight = { xHeight: 10, reach: 0 };
    assert.equal(fusedMarks(beside(-1.32, 10.25), tight).fused, 0);
    assert.equal(fusedMarks(beside(-1.35, 10.25), tight).fused, 1);
    // The beam takes half a millimetre more all round, with a round corner: (x + 0.5) × 2.75 − 0.25 × (1 − π/4) mm², at x = 0.61.
    assert.equal(fusedMarks(beside(-0.6, 10.25), wide).fused, 0);
    assert.equal(fusedMarks(beside(-0.63, 10.25), wide).fused, 1);
  });

  it('is none where the letter is so tall that it hangs from it: three fifths of the sign', () => {
    // 8 + 0.6 · 6 = 11.6; a dot above the letter makes it no taller.
    assert.equal(fusedMarks(beside(-0.8, 11.55), wide).fused, 1);
    assert.equal(fusedMarks(beside(-0.8, 11.65), wide).fused, 0);
    assert.equal(fusedMarks(beside(-0.8, 11, block(6, 12, 2, 2)), wide).fused, 1);
  });
});
