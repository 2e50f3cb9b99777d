import assert from 'node:assert/strict';
import { materialNames, materialOf } from '../../../src/strength/materials.ts';

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
      const { along, across, shear: sheared } = found.strengths!(3)!;
      assert.deepEqual(
        [found.name, along?.value, sheared?.value, across?.value, found.density.value],
        [name, bending, shear, tensionAcross, density],
      );
      assert.equal(across !== undefined, tensionAcross !== undefined, 'what is not published is absent');
    });
  }

  it('of acrylic are the minima of UFGS acrylic glazing, table 3-1', () => {
    for (const name of ['cast acrylic', 'extruded acrylic', 'acrylic']) {
      const { kind, strengths, density } = materialOf(name)!;
      const { along, across, shear } = strengths!(3)!;
      assert.deepEqual([kind, along!.value, across, shear!.value, density.value], ['plastic', 62, along, 55, 1190]);
    }
  });

  it('of birch plywood by thickness are those of the Handbook of Finnish Plywood (2002, from memory)', () => {
    const { density, strengths } = materialOf('birch plywood')!;
    assert.equal(density.value, 660, 'a manufacturer’s data sheet for 4 mm');
    const of = (thickness: number) => {
      const { along, across } = strengths!(thickness)!;
      return [along!.value, across!.value];
    };
    assert.deepEqual(of(4), [45.8, 29.2]);
    assert.deepEqual(of(6.5), [42.2, 32.8]);
    assert.deepEqual(of(5), [42.2, 29.2], 'between two the weaker of each');
    assert.equal(strengths!(2.49), undefined);
    assert.equal(strengths!(21.01), undefined);
  });

  it('name a source for every figure, and have a density where they have a name', () => {
    for (const name of materialNames) {
      const material = materialOf(name);
      assert.ok(material?.name === name, name);
      const { density, strengths, lasting, holeGrain } = material;
      const { along, across, shear } = strengths?.(3) ?? {};
      const figures = [density, along, across, shear, lasting, holeGrain?.along, holeGrain?.across];
      for (const figure of figures.filter((each) => each !== undefined)) {
        assert.ok(figure.source.length > 3 && figure.value > 0, name);
        assert.ok(['seen', 'from memory', 'our own judgement'].includes(figure.known));
      }
      assert.ok(density.value > 100 && density.value < 1300, `${name}: ${density.value} kg/m³`);
    }
  });

  it('are of the weaker where the name does not say which acrylic it is', () => {
    assert.match(materialOf('clear acrylic')!.assumed!, /extruded/);
    for (const name of ['cast acrylic', 'extruded acrylic']) assert.equal(materialOf(name)!.assumed, undefined);
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
    ['clear cast acrylic', 'cast acrylic'],
    ['extruded acrylic, red', 'extruded acrylic'],
    ['Poplar plywood, 4 mm', 'poplar plywood'],
    ['linden plywood', 'basswood plywood'],
    ['MDF 3 mm', 'MDF'],
    ['medium-density fibreboard', 'MDF'],
    ['tempered hardboard', 'tempered hardboard'],
    ['hardboard', 'hardboard'],
    ['bamboo plywood', 'bamboo'],
    ['vegetable-tanned leather', 'leather'],
    ['greyboard card', 'greyboard'],
    ['cork sheet', 'cork'],
    ['Wool felt', 'wool felt'],
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
    'cast extruded acrylic',
    'polyester felt',
    'corrugated cardboard',
    'faux leather',
    'cherry red acrylic felt',
    'acrylic-coated MDF',
    'cork leather',
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
