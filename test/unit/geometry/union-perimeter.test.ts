import assert from 'node:assert/strict';
import fc from 'fast-check';
import { normalise, offset, union } from '../../../src/geometry/clipper.ts';
import { transform, translation } from '../../../src/geometry/affine.ts';
import { flatten } from '../../../src/geometry/flatten.ts';
import { perimeter } from '../../../src/geometry/measure.ts';
import type { Region } from '../../../src/geometry/types.ts';
import { unionPerimeter } from '../../../src/geometry/union-perimeter.ts';
import { layoutText } from '../../../src/text/text-layout.ts';
import { bundledFace } from '../../fonts/faces.ts';

function disc(radius: number, x: number): Region {
  const count = 2000;
  return [
    Array.from({ length: count }, (_, k) => {
      const angle = (2 * Math.PI * (k + 0.5)) / count;
      return { x: x + radius * Math.cos(angle), y: radius * Math.sin(angle) };
    }),
  ];
}

describe('The length of the outline of a union', () => {
  it('of two discs is that of the arcs outside of each other (a circular segment, any handbook)', () => {
    // Two circles of radius r, d apart: each loses an arc of 2·acos(d / 2r).
    for (const [r, d] of [
      [5, 6],
      [5, 9.9],
      [5, 0.5],
    ] as const) {
      const expected = 2 * r * (2 * Math.PI - 2 * Math.acos(d / (2 * r)));
      assert.ok(Math.abs(unionPerimeter([disc(r, 0), disc(r, d)]) - expected) < 1e-3);
    }
  });

  it('of discs that lie apart is that of all, and of one within another that of the outer one', () => {
    assert.ok(Math.abs(unionPerimeter([disc(1, 0), disc(1, 3)]) - 4 * Math.PI) < 1e-3);
    assert.ok(Math.abs(unionPerimeter([disc(1, 0.3), disc(3, 0)]) - 6 * Math.PI) < 1e-3);
    assert.equal(unionPerimeter([]), 0);
  });

  it('of letters grown and pushed together is that of the union that Clipper makes', async () => {
    const face = await bundledFace('Pacifico');
    const { glyphs } = layoutText(face, { text: 'Sagebrush &', align: 'left' });
    const affine = { a: 20, b: 0, c: 0, d: 20, e: 0, f: 0 };
    const letters = glyphs
      .map(({ curves }) => normalise(flatten(curves, { affine })))
      .filter(({ length }) => length > 0);
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 4.5, noNaN: true }),
        (grow, nearer) => {
          const made = letters.map((letter, k) => transform(offset(letter, grow), translation(-nearer * k, 0)));
          const expected = perimeter(union(made));
          assert.ok(Math.abs(unionPerimeter(made) - expected) < 1e-3 * expected);
        },
      ),
      { seed: 2, numRuns: 40 },
    );
  });
});
