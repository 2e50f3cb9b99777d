import assert from 'node:assert/strict';
import { materialOf } from '../../../src/strength/materials.ts';

/** Wood Handbook FPL-GTR-190 (2010), table 5-3a, at 12 % moisture; density = 1000 · specific gravity · 1.12. */
const handbook = [
  // written, name, bending (MOR), shear along, tension across (MPa), density (kg/m³)
  ['basswood', 'American basswood', 60, 6.8, 2.4, 414],
  ['paper birch', 'paper birch', 85, 8.3, undefined, 616],
  ['yellow birch', 'yellow birch', 114, 13, 6.3, 694],
  ['sugar maple', 'sugar maple', 109, 16.1, undefined, 706],
  ['black walnut', 'black walnut', 101, 9.4, 4.8, 616],
  ['black cherry', 'black cherry', 85, 11.7, 3.9, 560],
  ['yellow-poplar', 'yellow-poplar', 70, 8.2, 3.7, 470],
  ['white oak', 'white oak', 105, 13.8, 5.5, 762],
] as const;

describe('Published properties', () => {
  for (const [written, name, bending, shear, tensionAcross, density] of handbook) {
    it(`of ${name} are the handbook's`, () => {
      const found = materialOf(written);
      assert.ok(found);
      assert.equal(found.kind, 'wood');
      const { tensionAcross: across, ...rest } = found;
      assert.deepEqual(
        [rest.name, rest.bending, rest.shear, across, rest.density],
        [name, bending, shear, tensionAcross, density],
      );
      assert.equal('tensionAcross' in found, tensionAcross !== undefined, 'what is not published is absent');
    });
  }

  it('of acrylic are the minima of UFGS acrylic glazing, table 3-1', () => {
    const { kind, tension, bending, shear, density } = materialOf('acrylic')!;
    assert.deepEqual([kind, tension, bending, shear, density], ['plastic', 62, 97, 55, 1190]);
  });

  it('of birch plywood are a density (a manufacturer’s data sheet) and no strength', () => {
    const found = materialOf('birch plywood')!;
    assert.equal(found.density, 660);
    for (const key of ['bending', 'tension', 'tensionAcross', 'shear']) assert.ok(!(key in found), key);
  });

  for (const [written, name] of [
    ['walnut', 'black walnut'],
    ['  Solid WALNUT, 3 mm board ', 'black walnut'],
    ['walnut (American black)', 'black walnut'],
    ['Cherry wood', 'black cherry'],
    ['hard maple', 'sugar maple'],
    ['maple', 'sugar maple'],
    ['poplar', 'yellow-poplar'],
    ['tulip poplar', 'yellow-poplar'],
    ['oak', 'white oak'],
    ['American basswood sheet 3mm', 'American basswood'],
    ['Birch ply', 'birch plywood'],
    ['baltic birch plywood, 4 mm', 'birch plywood'],
    ['clear cast acrylic', 'acrylic'],
    ['PMMA', 'acrylic'],
    ['acrylic (PMMA), frosted', 'acrylic'],
  ] as const) {
    it(`are found for “${written}”`, () => {
      assert.equal(materialOf(written)?.name, name);
    });
  }

  for (const written of [
    'walnut veneered plywood',
    'walnut veneer MDF',
    'walnut-stained basswood',
    'walnut plywood',
    'walnut effect laminate',
    'white walnut',
    'red oak',
    'European oak',
    'soft maple',
    'birch',
    'birch veneer',
    'poplar plywood',
    'cherry red acrylic felt',
    'acrylic-coated MDF',
    'cork',
    'plywood',
    'solid',
    '3 mm',
    '',
  ]) {
    it(`are not guessed for “${written}”`, () => {
      assert.equal(materialOf(written), undefined);
    });
  }
});
