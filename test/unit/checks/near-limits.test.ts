import assert from 'node:assert/strict';
import { isAt } from '../../../src/checks/measures/blame.ts';
import { closeness } from '../../../src/checks/measures/closeness.ts';
import { hangerWeak } from '../../../src/checks/hanger-weak.ts';
import { doubtful, readability } from '../../../src/checks/measures/readability.ts';
import { thinPlaces } from '../../../src/checks/measures/thin-places.ts';
import { union } from '../../../src/geometry/clipper.ts';
import type { Region } from '../../../src/geometry/types.ts';
import type { Stock } from '../../../src/spec/model/workshop-model.ts';
import { Lettering } from '../../../src/tag/lettering/letters.ts';
import type { Piece, PlacedHanger, Tag } from '../../../src/tag/tag.ts';

function block(left: number, bottom: number, right: number, top: number): Region {
  return [
    [
      { x: left, y: bottom },
      { x: right, y: bottom },
      { x: right, y: top },
      { x: left, y: top },
    ],
  ];
}

/** Two plates joined by a strap 1 mm wide. */
const strap = block(20, 9.5, 30, 10.5);
const plates = union([block(0, 0, 20, 20), block(30, 0, 50, 20), strap]);
const stock = { minWeb: 2, leastWeb: 0.5 } as Stock;
const pieceOf = (more: Partial<Piece>): Piece =>
  ({ id: 'tag', path: [], region: plates, hangers: [], parts: 'one', sources: [], ...more }) as unknown as Piece;
const hangerOf = (lug: Region, opening: Region): PlacedHanger =>
  ({ path: ['hanger'], lug, opening, centre: { x: 25, y: 15 } }) as unknown as PlacedHanger;
const far = block(24, 14, 26, 16);

describe('Limits of what belongs to what, on either side', () => {
  it('a place is at a hanger within 0.05 mm of its outline', () => {
    const ring = hangerOf(block(0, 0, 10, 10), block(4, 4, 6, 6));
    assert.equal(isAt(ring, [{ x: 5, y: 10.049 }]), true);
    assert.equal(isAt(ring, [{ x: 5, y: 10.051 }]), false);
    assert.equal(isAt(ring, [{ x: 5, y: 3.951 }]), true);
    assert.equal(isAt(ring, [{ x: 5, y: 3.949 }]), false);
  });

  it('a neck is the wall round the hole where it ends within 0.05 mm of it, else where the ring joins', () => {
    const messageAt = (gap: number): string | undefined => {
      const piece = pieceOf({ hangers: [hangerOf(strap, block(20, 10.5 + gap, 30, 14))] });
      return hangerWeak({ pieces: [piece], stock } as unknown as Tag)[0]?.message;
    };
    assert.match(messageAt(0.049) ?? '', /wall around its hole/);
    assert.match(messageAt(0.051) ?? '', /joins it to the body/);
  });

  it('a neck is as wide as was asked where both ends lie within 0.05 mm of what was drawn so wide', () => {
    const found = (off: number): number => {
      const asked = [{ region: block(20, 9.5 - off, 30, 10.5 + off), width: 1 }];
      return thinPlaces(pieceOf({ asked }), stock, 'elsewhere').length;
    };
    assert.equal(found(0.049), 0);
    assert.equal(found(0.051), 1);
    assert.equal(thinPlaces(pieceOf({ hangers: [hangerOf(far, far)] }), stock, 'elsewhere').length, 1);
  });
});

describe('Limits of reading, on either side', () => {
  it('letters that were slid may share half of the x-height', () => {
    const crowded = (height: number): number => {
      const standing = (outline: Region, like: number) => ({ like, at: outline[0]![0]!, outline, spaced: undefined });
      const letters = [
        { ...standing(block(0, 2, 5, 2 + height), 0), opens: true },
        { ...standing(block(5, 0, 10, 12), 1), opens: false },
      ];
      return closeness(letters, { xHeight: 10, reach: 0.1, slid: true }).crowded;
    };
    assert.equal(crowded(4.9), 0);
    assert.ok(crowded(5.1) > 0);
  });

  it('letters that keep 0.97 of their outline are as drawn, however bold', () => {
    // Two squares of 10 mm whose corners lap by `lap` each way lose four times that of an outline of 80 mm.
    const doubt = (lap: number): number => {
      const letters = [
        { text: 'n', region: block(0, 0, 10, 10), opens: true },
        { text: 'u', region: block(10 - lap, 10 - lap, 20 - lap, 20 - lap), opens: false },
      ];
      const about = { path: [], xHeight: 10, grow: 0, as: 'material' as const };
      return readability(new Lettering(about, () => letters), { beam: 0 })!.doubt;
    };
    assert.ok(doubt((80 * 0.029) / 4) <= doubtful);
    assert.ok(doubt((80 * 0.031) / 4) > doubtful);
  });
});
