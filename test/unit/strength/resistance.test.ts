import assert from 'node:assert/strict';
import { measuredShare, resistancesOf } from '../../../src/strength/resistance.ts';
import type { Stock } from '../../../src/spec/model/workshop-model.ts';
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

describe('What a stock is published to bear', () => {
  it('is the strength times the thickness, of which scatter and cut edges leave a share', () => {
    // Wood Handbook FPL-GTR-190, table 5-3a: walnut bears 101 MPa bent, 4.8 across its grain, 9.4 in shear; 1 − 1.645·CV of
    // 16, 28 and 14 % (table 5-6, from memory). A fifth off for cut edges is our own judgement.
    const { along, across, shear, unknown } = resistancesOf(stockOf('walnut', 3));
    assert.equal(unknown, undefined);
    assertNear(along!.newtonsPerMm, 303, 1e-9);
    assertNear(across!.newtonsPerMm, 14.4, 1e-9);
    assertNear(shear!.newtonsPerMm, 28.2, 1e-9);
    assertNear(along!.share, 0.7368 * 0.8, 1e-9);
    assertNear(across!.share, 0.5394 * 0.8, 1e-9);
    assertNear(shear!.share, 0.7697 * 0.8, 1e-9);
    assert.deepEqual(across!.basis, { source: 'Wood Handbook FPL-GTR-190 (2010), table 5-3a' });
  });

  it('is one and the same both ways where there is no grain', () => {
    const { along, across } = resistancesOf(stockOf('cast acrylic', 3));
    assert.equal(along, across);
    // The least of table 3-1 of the UFGS for acrylic glazing: 62 MPa.
    assertNear(along!.newtonsPerMm, 186, 1e-9);
    assert.equal(along!.share, 0.5, 'no scatter off minima; half for cut edges is our own judgement');
  });

  for (const [material, thickness, why] of [
    [undefined, 3, 'no material is given under stock'],
    ['moon cheese', 3, 'no published strength is known for “moon cheese”'],
    ['cork', 3, 'no strength of cork is known here'],
    ['basswood', undefined, 'no thickness is given under stock'],
    ['birch plywood', 50.123, 'no strength of birch plywood of this thickness is known here'],
    ['sugar maple', 3, 'the strength of sugar maple across its grain is not published'],
  ] as const) {
    it(`is unknown where ${why}`, () => {
      assert.equal(resistancesOf(stockOf(material, thickness)).unknown, why);
    });
  }
});

describe('What a broken neck says', () => {
  it('is taken to scatter as wood does, unless it came out of a press or a mould', () => {
    for (const [material, share] of [
      ['walnut', measuredShare.grown],
      ['ash', measuredShare.grown],
      ['leather', measuredShare.grown],
      [undefined, measuredShare.grown],
      ['MDF', measuredShare.made],
      ['cast acrylic', measuredShare.made],
    ] as const)
      assert.equal(resistancesOf(broken(material, 3, 20)).across!.share, share, material);
  });

  it('of shear is half of what it bore, where no shear is published (Tresca)', () => {
    const unknown = resistancesOf(broken('moon cheese', 3, 42));
    assert.equal(unknown.shear!.newtonsPerMm, 10.5);
    assert.equal(unknown.shear!.share, measuredShare.grown);
    assert.equal(unknown.shear!.basis, 'measured');
    assert.deepEqual(resistancesOf(broken('MDF', 3, 42)).shear, resistancesOf(stockOf('MDF', 3)).shear);
  });

  it('in a weak material that is not wood needs no thickness, and in wood of any kind it does', () => {
    assert.equal(resistancesOf(broken('leather', undefined, 1)).unknown, undefined);
    for (const wood of ['walnut', 'ash'])
      assert.equal(resistancesOf(broken(wood, undefined, 1)).unknown, 'no thickness is given under stock');
  });

  it('along the grain leaves the rest as published', () => {
    const published = resistancesOf(stockOf('walnut', 3));
    const { along, brokenAlong, ...rest } = resistancesOf(broken('walnut', 3, 500));
    assert.equal(along!.newtonsPerMm, 250);
    assert.ok(brokenAlong);
    assert.deepEqual({ ...rest, along: published.along }, published);
    assert.equal(
      resistancesOf(broken('ash', 3, 500)).unknown,
      'the neck was broken along the grain, and the weaker way is not known',
    );
  });
});
