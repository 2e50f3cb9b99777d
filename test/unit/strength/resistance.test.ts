import assert from 'node:assert/strict';
import { measuredShare, resistancesOf } from '../../../src/strength/resistance.ts';
import type { Stock } from '../../../src/spec/model.ts';
import { assertNear } from '../support/engine.ts';
import { assertClose, bearing, dumbbell, estimateOf, sectionOf, stockOf } from './pieces.ts';
import { estimateLoad } from '../../../src/strength/load.ts';

const broken = (material: string | undefined, thickness: number | undefined, breaksAt: number, neck = 2): Stock => ({
  ...stockOf(material, thickness),
  measured: { breaksAt, neck },
});

describe('A neck that was broken', () => {
  it('counts before any handbook, also where none knows the material, or its thickness', () => {
    for (const material of ['birch plywood', 'MDF', 'bamboo', 'something new', undefined]) {
      const { along, across, unknown } = resistancesOf(broken(material, undefined, 42));
      assert.equal(unknown, undefined);
      assert.equal(along, across);
      assert.equal(along!.newtonsPerMm, 21);
      assert.equal(along!.basis, 'measured');
    }
  });

  it('bears as much per width as it did, less its scatter, with nothing off for cut edges', () => {
    // 42 N on 2 mm: 0.6 mm bear 12.6 N.
    const estimate = bearing(estimateLoad(dumbbell(0.6), broken('birch plywood', 3, 42))!);
    const neck = sectionOf(estimate, 'neck');
    assertClose(neck.newtons.across, 12.6, 0.03);
    assertClose(neck.bears, 12.6 * measuredShare.made, 0.03);
    // 1 − 1.645 · 15 %, 1 − 1.645 · 28 % (normal distribution; the coefficients are our own judgement).
    assertNear(measuredShare.made, 0.75325, 1e-9);
    assertNear(measuredShare.grown, 0.5394, 1e-9);
  });

  it('of wood that bore more than three times what it bears across its grain was broken along it', () => {
    // Wood Handbook, table 5-3a: walnut 4.8 MPa across, so 3 · 4.8 · 3 mm · 2 mm = 86.4 N.
    const of = (newtons: number) => resistancesOf(broken('walnut', 3, newtons));
    assert.equal(of(86.3).brokenAlong, undefined);
    assert.equal(of(86.3).across!.basis, 'measured');
    const along = of(86.5);
    assert.deepEqual(along.brokenAlong, { breaksAt: 86.5, neck: 2 });
    assert.equal(along.across!.newtonsPerMm, 4.8 * 3);
    assert.equal(along.along!.basis, 'measured');
    const weakest = bearing(estimateOf(dumbbell(0.6), 'walnut', 3)).shortPull;
    assertClose(bearing(estimateLoad(dumbbell(0.6), broken('walnut', 3, 500))!).shortPull, weakest, 1e-9);
  });

  it('along the grain leaves the weaker way unknown in wood that is not in the table', () => {
    // The strongest of the table bears 6.3 MPa across: 3 · 6.3 · 3 · 2 = 113.4 N.
    assert.equal(resistancesOf(broken('ash', 3, 113)).unknown, undefined);
    assert.match(resistancesOf(broken('ash', 3, 114)).unknown!, /broken along the grain/);
    assert.match(resistancesOf(broken('sugar maple', 3, 500)).unknown!, /broken along the grain/);
    assert.match(resistancesOf(broken('ash', undefined, 42)).unknown!, /no thickness/);
    assert.equal(
      resistancesOf(broken('birch plywood', 3, 500)).unknown,
      undefined,
      'plywood has no weak way like that',
    );
  });

  it('changes nothing of what a hanging sheet is published to bear', () => {
    const cast = bearing(estimateLoad(dumbbell(0.6), broken('cast acrylic', 3, 500))!);
    // 10.3 MPa, half for cut edges.
    assertClose(cast.hanging, 10.3 * 3 * 0.6 * 0.5, 0.03);
  });
});
