import assert from 'node:assert/strict';
import {
  arcToleranceMm,
  difference,
  intersection,
  normalise,
  offset,
  union,
  unionOfWhole,
  unitsPerMm,
} from '../../../src/geometry/clipper.ts';
import { flatten } from '../../../src/geometry/flatten.ts';
import { area, boundsOf, perimeter, ringArea } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { roundedRectangle } from '../../../src/tag/shapes/plates.ts';
import { FontLibrary } from '../../../src/text/font-library.ts';
import { layoutText } from '../../../src/text/text-layout.ts';
import { packagedFontFiles } from '../../fonts/font-files.ts';
import { assertNear } from '../support/engine.ts';
import { offsetAreaByClipper2, unionAreaByJts } from '../support/reference.ts';
import { box, disc, polygon, subtract, transformed, unite } from '../support/shapes.ts';

const plate: Region = [box(0, 0, 80, 40)];

/** A full turn of an offset's arcs is a polygon on the circle of radius r whose sagitta is the tolerance at most. */
const lostToArcs = (r: number) => 2 * Math.PI * r * arcToleranceMm;

describe('Growing and thinning', () => {
  it('grow an 80 × 40 plate by 2 as Steiner’s formulas say: A + P·r + πr², P + 2πr', () => {
    const grown = offset(plate, 2);
    assertNear(area(grown), 3692.56637, lostToArcs(2), 'area');
    assertNear(perimeter(grown), 252.56637, 0.02, 'perimeter');
    assert.ok(area(grown) < 3692.56638, 'the polygon lies inside the arcs');
  });

  it('thin it by 2 to 76 × 36', () => {
    assertNear(area(offset(plate, -2)), 2736, 1e-6);
  });

  it('leave nothing where it is thinned by half its height or more', () => {
    assert.deepEqual(offset(plate, -20), []);
    assert.deepEqual(offset(plate, -1000), []);
  });

  it('keep sharp corners when mitred: 84 × 44', () => {
    assertNear(area(offset(plate, 2, 'miter')), 84 * 44, 1e-4);
  });

  it('shrink holes as they grow the outline', () => {
    const ring = subtract(unite(disc(0, 0, 10)), unite(disc(0, 0, 5)));
    const grown = offset(ring, 1);
    assertNear(area(grown), Math.PI * (11 ** 2 - 4 ** 2), 0.5);
    assert.deepEqual(
      grown.map((each) => Math.sign(ringArea(each))).sort((a, b) => a - b),
      [-1, 1],
    );
  });

  it('change nothing by 0, and know no offset that is not a number', () => {
    assert.equal(offset(plate, 0), plate);
    assert.deepEqual(offset([], 3), []);
    assert.throws(() => offset(plate, NaN), RangeError);
    assert.throws(() => offset(plate, Infinity), RangeError);
  });

  it('follow the arc tolerance stated: no point of a grown corner is further from the true arc', () => {
    for (const point of offset([box(-0.5, -0.5, 0.5, 0.5)], 5)[0]!) {
      const away = Math.hypot(Math.max(Math.abs(point.x) - 0.5, 0), Math.max(Math.abs(point.y) - 0.5, 0));
      assertNear(away, 5, 1e-4);
    }
    const [ring] = offset([box(-0.5, -0.5, 0.5, 0.5)], 5);
    ring!.forEach((point, index) => {
      const next = ring![(index + 1) % ring!.length]!;
      const [x, y] = [Math.abs(point.x + next.x) / 2, Math.abs(point.y + next.y) / 2];
      const away = Math.hypot(Math.max(x - 0.5, 0), Math.max(y - 0.5, 0));
      assertNear(away, 5, arcToleranceMm + 1e-4);
    });
  });
});

describe('Plates of arcs', () => {
  // Exact: area ab − (4 − π)r², perimeter 2(a + b) − (8 − 2π)r.
  for (const [a, b, r] of [
    [80, 40, 6],
    [20, 20, 10],
    [30, 10, 0],
  ] as const) {
    it(`have the area and perimeter of a rounded rectangle ${a} × ${b}, r ${r}`, () => {
      const region = normalise([roundedRectangle(a, b, r)]);
      assertNear(area(region), a * b - (4 - Math.PI) * r ** 2, 2 * Math.PI * r * 0.002 + 1e-6, 'area');
      assertNear(perimeter(region), 2 * (a + b) - (8 - 2 * Math.PI) * r, 0.01, 'perimeter');
    });
  }

  it('unite to what two overlapping discs have: R = 10, centres 16 apart', () => {
    const both = union([[disc(0, 0, 10, 0.0005)], [disc(16, 0, 10, 0.0005)]]);
    // Exact: two discs less their lens, 2R²·acos(d/2R) − d/2·√(4R² − d²) = 32.7002.
    assertNear(area(both), 595.61831, 595.61831 * 1e-4, 'area');
    assertNear(perimeter(both), 99.92366, 99.92366 * 1e-4, 'perimeter');
    assert.equal(both.length, 1);
  });
});

describe('Real words, against other libraries', () => {
  const library = new FontLibrary(packagedFontFiles());

  /** Each letter at 20 mm an em, drawn a little over its neighbour so that there is something to unite. */
  async function lettersOf(text: string, family: string): Promise<Region[]> {
    const answer = await library.load({ family, weight: 600, italic: false });
    assert.ok('face' in answer);
    const { glyphs } = layoutText(answer.face, { text, align: 'left', letterSpacing: -0.03 });
    return glyphs
      .map(({ curves }) => flatten(curves, { affine: { a: 20, b: 0, c: 0, d: 20, e: 0, f: 0 } }))
      .filter((rings) => rings.length > 0);
  }

  for (const [text, family] of [
    ['Sorrel', 'Alfa Slab One'],
    ['Kohlrabi', 'Nunito'],
    ['Chamomile', 'Pacifico'],
    ['Angelica', 'Great Vibes'],
  ] as const) {
    it(`unite “${text}” in ${family} as jsts does, and grow and thin it as Clipper2 does`, async () => {
      const letters = await lettersOf(text, family);
      assert.ok(letters.length > 5);
      const united = union(letters);
      const expected = unionAreaByJts(letters.map((letter) => normalise(letter)));
      assertNear(area(united), expected, expected * 1e-4, 'union');
      for (const delta of [0.5, 3, -0.2]) {
        const reference = offsetAreaByClipper2(united, delta);
        assert.ok(reference > 1);
        assertNear(area(offset(united, delta)), reference, reference * 1e-4, `offset by ${delta}`);
      }
    });
  }
});

describe('Booleans', () => {
  const left: Region = [box(0, 0, 10, 10)];
  const right: Region = [box(6, 2, 16, 8)];

  it('unite, take away and share as the areas add up', () => {
    assertNear(area(union([left, right])), 100 + 60 - 24, 1e-9);
    assertNear(area(difference(left, [right])), 76, 1e-9);
    assertNear(area(unionOfWhole([left, right])), 100 + 60 - 24, 1e-9);
    const far: Region = [box(30, 0, 40, 10)];
    assert.deepEqual(unionOfWhole([left, far]), [...left, ...far]);
    assertNear(area(union([left, far])), 200, 1e-9);
    assert.deepEqual(intersection(left, far), []);
    assertNear(area(difference([...left, ...far], [right, [box(60, 0, 70, 10)]])), 176, 1e-9);
    assertNear(area(intersection(left, right)), 24, 1e-9);
    assertNear(area(difference(left, [])), 100, 1e-9);
    assert.deepEqual(difference(left, [left]), []);
    assert.deepEqual(intersection(left, []), []);
    assert.deepEqual(union([]), []);
  });

  it('give outer rings counter-clockwise and holes clockwise, whichever way they came', () => {
    for (const ring of [box(0, 0, 10, 10), box(0, 0, 10, 10).toReversed()]) {
      const [only] = normalise([ring]);
      assert.equal(ringArea(only!), 100);
    }
    const holed = difference(left, [[box(4, 4, 6, 6)]]);
    assert.deepEqual(
      holed.map(ringArea).sort((a, b) => a - b),
      [-4, 100],
    );
  });

  it('fill what crosses itself by the rule asked for', () => {
    // Two squares on one another: all of it by non-zero, the odd parts by even-odd.
    const twice = [box(0, 0, 10, 10), box(5, 0, 15, 10)];
    assertNear(area(normalise(twice)), 150, 1e-9);
    assertNear(area(normalise(twice, 'evenodd')), 100, 1e-9);
    // A bow-tie: two triangles of 25 mm², one of them wound the other way.
    const bowTie = polygon([0, 0], [10, 10], [10, 0], [0, 10]);
    assertNear(area(normalise([bowTie])), 50, 1e-9);
    assertNear(area(normalise([bowTie], 'evenodd')), 50, 1e-9);
  });
});

describe('Degenerate outlines', () => {
  const nothing: readonly (readonly [string, Region])[] = [
    ['no rings', []],
    ['an empty ring', [[]]],
    ['one point', [polygon([1, 1])]],
    ['a line there and back', [polygon([0, 0], [10, 0])]],
    ['points in a line', [polygon([0, 0], [5, 5], [10, 10], [3, 3])]],
    ['one point many times', [polygon([2, 2], [2, 2], [2, 2], [2, 2])]],
  ];
  for (const [what, rings] of nothing) {
    it(`are nothing: ${what}`, () => {
      assert.deepEqual(normalise(rings), []);
      assertNear(area(difference(plate, [rings])), 3200, 1e-9);
      assert.deepEqual(intersection(plate, rings), []);
      assert.equal(area(union([plate, rings])), 3200);
    });
  }

  it('with a coordinate that is no number are refused', () => {
    for (const bad of [NaN, Infinity, -Infinity]) {
      const ring = [
        { x: 0, y: 0 },
        { x: 5, y: bad },
        { x: 5, y: 5 },
      ];
      assert.throws(() => normalise([ring]), RangeError);
      assert.throws(() => difference(plate, [[ring]]), RangeError);
      assert.throws(() => offset([ring], 1), RangeError);
    }
  });

  it('with repeated points keep their area', () => {
    assert.equal(area(normalise([polygon([0, 0], [0, 0], [4, 0], [4, 0], [4, 4], [0, 4], [0, 4])])), 16);
  });
});

describe('The scale of the integers', () => {
  it('is a hundred-thousandth of a millimetre', () => {
    assert.equal(unitsPerMm, 100_000);
    const fine = normalise([box(0, 0, 0.00123, 1)]);
    assertNear(boundsOf(fine)!.maxX, 0.00123, 0.5 / unitsPerMm + 1e-12);
  });

  it('holds beyond ±474 mm, where the fast path of the library ends', () => {
    for (const far of [473, 475, 1500, 3000]) {
      const region = [transformed([box(0, 0, 80, 40)], 0, 1, far, -far)];
      const moved = region.flat();
      const hole = transformed([box(10, 10, 20, 20)], 0, 1, far, -far);
      assertNear(area(difference(moved, [hole])), 3100, 1e-6, `${far} mm away`);
      assertNear(area(union([moved, hole])), 3200, 1e-6);
      assertNear(area(offset(moved, 2)), 3692.56637, lostToArcs(2));
      const wide = normalise([box(-far, -far, far, far)]);
      assertNear(area(wide), 4 * far * far, 1e-6);
    }
  });
});
