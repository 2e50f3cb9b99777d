import assert from 'node:assert/strict';
import fc from 'fast-check';
import { cutEdge, estimateLoad } from '../../../src/strength/load.ts';
import { sectionsOf } from '../../../src/strength/sections.ts';
import { make, specOf } from '../support/engine.ts';
import { box, subtract } from '../support/shapes.ts';
import {
  assertClose,
  bearing,
  drilled,
  dumbbell,
  estimateOf,
  movedPiece,
  plate,
  sawn,
  slotted,
  stockOf,
} from './pieces.ts';

describe('A load estimate', () => {
  const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });

  it('does not depend on which way the drawing lies', () => {
    const pieces = [sawn(0.5, 3.5), dumbbell(2), plate, slotted([box(-15, -60, 15, 0)], { x: 0, y: -5.5 }, 11, 3)];
    const before = pieces.map((piece) => bearing(estimateOf(piece, 'cherry', 4)));
    fc.assert(
      fc.property(fc.nat(pieces.length - 1), angle, (which, turn) => {
        const moved = estimateOf(movedPiece(pieces[which]!, turn, 1, 30, -20), 'cherry', 4);
        assertClose(bearing(moved).shortPull, before[which]!.shortPull, 0.015);
        assert.equal(bearing(moved).weakest.what, before[which]!.weakest.what);
      }),
      { numRuns: 40 },
    );
  });

  it('grows with the square of the size', () => {
    const pieces = [sawn(0.5, 3.5), dumbbell(2), plate];
    const before = pieces.map((piece) => bearing(estimateOf(piece, 'cherry', 3)).shortPull);
    fc.assert(
      fc.property(fc.nat(pieces.length - 1), fc.double({ min: 0.6, max: 4, noNaN: true }), (which, k) => {
        const scaled = estimateOf(movedPiece(pieces[which]!, 0, k), 'cherry', 3 * k);
        assertClose(bearing(scaled).shortPull, before[which]! * k * k, 0.03);
      }),
      { numRuns: 30 },
    );
  });

  it('grows in step with the thickness', () => {
    const thin = bearing(estimateOf(plate, 'white oak', 2));
    const thick = bearing(estimateOf(plate, 'white oak', 5));
    assertClose(thick.shortPull, 2.5 * thin.shortPull, 1e-9);
  });

  it('is never less for a wider neck', () => {
    const width = fc.double({ min: 0.4, max: 6, noNaN: true });
    fc.assert(
      fc.property(width, width, (one, other) => {
        const [narrow, wide] = [Math.min(one, other), Math.max(one, other)].map((w) =>
          bearing(estimateOf(dumbbell(w), 'walnut', 3)),
        );
        assert.ok(wide!.shortPull >= narrow!.shortPull * 0.985, `${narrow!.shortPull} → ${wide!.shortPull}`);
      }),
      { numRuns: 20 },
    );
  });

  it('for acrylic knows no grain, takes no scatter off minima, and says nothing of years', () => {
    const estimate = bearing(estimateOf(dumbbell(2), 'clear acrylic', 3));
    const { newtons, weaker } = estimate.weakest;
    // UFGS acrylic glazing, table 3-1: tension at least 62 MPa.
    assertClose(newtons.along, 62 * 3 * 2, 0.02);
    assert.equal(newtons.across, newtons.along);
    assert.equal(weaker, undefined);
    assertClose(estimate.shortPull, cutEdge.plastic * newtons.along!, 1e-9);
    assert.ok(!('hanging' in estimate));
  });

  for (const [why, material, thickness, reason] of [
    ['the material has no published strength', 'birch plywood', 3, /no strength of birch plywood is published/],
    ['strength across the grain is not published', 'sugar maple', 3, /sugar maple across its grain is not published/],
    ['strength across the grain is not published', 'paper birch', 3, /paper birch across its grain is not published/],
    ['the material is not known', 'walnut veneered plywood', 3, /no published strength is known for “walnut veneered/],
    ['no material is given', undefined, 3, /no material is given/],
    ['no thickness is given', 'walnut', undefined, /no thickness is given/],
  ] as const) {
    it(`is unknown where ${why}: ${material ?? 'none'}`, () => {
      const estimate = estimateOf(dumbbell(2), material, thickness);
      assert.ok(estimate.kind === 'unknown');
      assert.match(estimate.reason, reason);
      assert.equal(estimate.weakest.what, 'neck');
      assert.equal(estimate.weakest.bears, undefined);
      for (const { what, newtons, bears } of estimate.sections) {
        if (what !== 'tear-out') assert.equal(newtons.across, undefined, 'never 0 for what is not known');
        assert.notEqual(bears, 0);
      }
    });
  }

  it('is nothing where the opening is cut into from outside, or out at its edge', () => {
    const edge = estimateOf(drilled([box(-10, -40, 10, 0)], { x: 0, y: -1 }, 3), 'walnut', 3);
    const slit = drilled(subtract([box(-10, -40, 10, 0)], [box(3, -4.5, 11, -4)]), { x: 2, y: -4.2 }, 3);
    for (const estimate of [edge, estimateOf(slit, 'birch plywood', 3)]) {
      assert.ok(estimate.kind === 'nothing');
      assert.equal(estimate.fault, 'open');
    }
  });

  it('is nothing where the hanger is on a part that falls out, unless parts are meant to', async () => {
    const spec = (parts: string) =>
      specOf(
        ['body: {union: [{ellipse: 12}, {ellipse: 30, nudge: {down: 30}}]}'],
        `body: [body], ${parts}hanger: {ring: {at: top}}`,
      );
    const one = estimateOf((await make(spec(''))).pieces[0]!, 'walnut', 3);
    assert.ok(one.kind === 'nothing');
    assert.equal(one.fault, 'loose');
    assert.equal(estimateOf((await make(spec('parts: many, '))).pieces[0]!, 'walnut', 3).kind, 'bears');
  });

  it('is none at all for a piece without a hanger', async () => {
    const made = await make(specOf(['body: {rectangle: [30, 50]}']));
    assert.equal(estimateLoad(made.pieces[0]!, stockOf('walnut', 3)), undefined);
  });

  it('looks again only where the region, its hanger or its body is another', () => {
    const before = sectionsOf(plate, plate.hangers[0]!);
    const renamed = { ...plate, title: 'Another' };
    assert.equal(sectionsOf(renamed, renamed.hangers[0]!), before);
    const shifted = { ...plate, hanger: { ...plate.hangers[0]! } };
    assert.notEqual(sectionsOf(shifted, shifted.hanger), before);
  });
});
