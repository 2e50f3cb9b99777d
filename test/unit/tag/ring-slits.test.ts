import assert from 'node:assert/strict';
import { clippedToBox } from '../../../src/geometry/clip-to-box.ts';
import { difference, offset, union } from '../../../src/geometry/clipper.ts';
import { area, boundsOf, widened } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { slitsMm, withoutSlits } from '../../../src/tag/hanger/slits.ts';
import type { Piece, PlacedHanger } from '../../../src/tag/tag.ts';
import { assertNear, make, specOf } from '../support/engine.ts';

function box(left: number, bottom: number, right: number, top: number): Region {
  return [
    [
      { x: left, y: bottom },
      { x: right, y: bottom },
      { x: right, y: top },
      { x: left, y: top },
    ],
  ];
}

/** What is there of body and lug once slits are filled, less what was there before. */
function filled(lug: Region, body: Region, slitMm?: number): number {
  return area(union([body, withoutSlits(lug, body, slitMm)])) - area(union([body, lug]));
}

describe('A slit that a ring leaves', () => {
  // An L of which the lug laps over the stem, and hangs over the foot along 6 mm.
  const ell = union([box(-4, -4, 0, 8), box(-4, -4, 6, 0)]);
  const over = (gap: number) => box(-0.5, gap, 6, 6);

  it('is filled up to 0.3 mm, twice a usual kerf', () => {
    assertNear(filled(over(0.29), ell), 6 * 0.29, 0.1, 'mm² filled');
    assert.equal(filled(over(0.31), ell), 0);
    assert.equal(filled(over(2), ell), 0);
  });

  it('is filled up to 3 mm where the body is a backing round letters', async () => {
    assert.ok(filled(over(2.9), ell, slitsMm.backing) > 5 * 2.9);
    // But for its two corners: a quarter of a square of 3 mm less a disc in each.
    assert.ok(filled(over(3.1), ell, slitsMm.backing) < 2);
    const lugOn = async (body: string) => {
      const made = await make(
        specOf(['word: {text: Kürbis, font: Nunito, x_height: 12}', 'back: {around: word, by: 5}'], body),
      );
      const [{ region, hangers }] = made.pieces as [Piece];
      const [{ centre, opening, lug }] = hangers as [PlacedHanger];
      return { region, lug: lug!, centre, opening };
    };
    const back = await lugOn('body: [back], hanger: {ring: {at: top, diameter: 4, wall: 3}}');
    // Closed by a disc 2.8 mm wide, nothing is filled any more beside the ring.
    const near = widened(boundsOf(back.lug)!, 0.5);
    const around = clippedToBox(union([back.region, back.opening]), near);
    const closed = clippedToBox(offset(offset(around, 1.4, 'round', 0.01), -1.4, 'round', 0.01), widened(near, -1.6));
    assertNear(area(difference(closed, [around])), 0, 0.1, 'mm² of slits');
  });

  it('is none in the corner where a ring meets an edge', () => {
    assert.equal(filled(box(-0.5, -0.5, 6, 6), ell), 0);
  });

  it('is not filled where that would be a thin bridge beside a hole', () => {
    // The lug on one leg of a U, and near the other.
    const you = union([box(0, 0, 3, 10), box(0, 0, 12, 3), box(9, 0, 12, 10)]);
    assert.equal(filled(box(1, 8, 8.8, 10), you), 0);
  });

  it('is filled as a pinhole up to a millimetre wide', () => {
    const slot = (width: number) => union([box(0, 0, 4, 4), box(4 + width, 0, 9, 4), box(0, 0, 9, 2)]);
    const lug = box(2, 3.5, 7, 8);
    assertNear(filled(lug, slot(0.98)), 0.98 * 1.5, 0.01, 'mm² filled');
    assert.equal(filled(lug, slot(1.02)), 0);
  });

  it('is none of a letter itself', () => {
    const holed: Region = [...box(0, 0, 9, 4), [...box(4, 1, 4.5, 3)[0]!].reverse()];
    assert.equal(filled(box(2, 3.5, 7, 8), holed), 0);
    const notched = union([box(0, 0, 4, 4), box(4.2, 0, 9, 4), box(0, 0, 9, 2)]);
    assert.equal(filled(box(6, 3.5, 9, 8), notched), 0);
  });
});
