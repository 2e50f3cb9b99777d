import assert from 'node:assert/strict';
import { findNecks } from '../../../src/geometry/necks.ts';
import type { Point, Region } from '../../../src/geometry/types.ts';
import { distance } from '../support/distance.ts';
import { assertNear, make, placeOf, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { seededRandom } from '../support/shapes.ts';
import { assertSilent, found, only, placesIn } from './found.ts';

const plate = 'body: {rectangle: [40, 20]}';

function ringOn(shapes: readonly string[], ring: string, minWeb: number, piece = ''): Promise<Made> {
  return make(specOf(shapes, `body: [body], hanger: {ring: {${ring}}}${piece}`, [`stock: {min_web: ${minWeb} mm}`]));
}

const apart = ([p, q]: readonly Point[]) => Math.hypot(p!.x - q!.x, p!.y - q!.y);

describe('A ring', () => {
  // Exact: a disc of radius R whose centre is d outside a straight edge is joined to it by a chord of 2·√(R² − d²).
  // R 5, d 4.8: 2.8 mm.
  const outside = 'diameter: 2, wall: 4';
  for (const [side, at] of [
    ['top', 'up: 14.8'],
    ['bottom', 'down: 14.8'],
    ['left', 'left: 24.8'],
    ['right', 'right: 24.8'],
  ] as const) {
    it(`at the ${side} is told the chord that joins it`, async () => {
      const made = await ringOn([plate], `${outside}, at: {${at}}`, 3);
      const issue = only(made, 'hanger-weak');
      assert.equal(issue.severity, 'warning');
      assert.equal(issue.piece, 'tag');
      assertNear(issue.width!, 2.8, 0.01);
      assertNear(apart(issue.points!), 2.8, 0.01);
      for (const { x, y } of issue.points!) {
        const [along, out] = side === 'top' || side === 'bottom' ? [x, Math.abs(y) - 10] : [y, Math.abs(x) - 20];
        assertNear(Math.abs(along), 1.4, 0.01);
        assertNear(out, 0, 0.01);
      }
      assert.match(issue.message, /only 2\.(79|80) mm of material joins it/);
      assert.equal(placeOf(made.report, issue).line, 6);
      assertSilent(made, 'weak-bridge', 'the same place once');
      assertSilent(made, 'thin-stroke', 'the same place once');
    });
  }

  it('is silent where the chord is as long as is wanted', async () => {
    assertSilent(await ringOn([plate], `${outside}, at: {up: 14.8}`, 2.78), 'hanger-weak');
  });

  it('is told its wall where that is thinner than survives at all, once for all of it', async () => {
    for (const at of ['top', 'left', 'bottom-right', '37']) {
      const made = await ringOn([plate], `diameter: 4, wall: 0.7, at: ${at}`, 1.5);
      const issue = only(made, 'hanger-weak');
      // Exact: R − r.
      assertNear(issue.width!, 0.7, 0.01);
      assert.equal(issue.minimum, 0.8);
      const { centre } = made.pieces[0]!.hangers[0]!;
      const radii = issue.points!.map((point) => apart([point, centre])).sort((a, b) => a - b);
      assertNear(radii[0]!, 2, 0.01);
      assertNear(radii[1]!, 2.7, 0.01);
      assert.match(issue.message, /the wall around its hole is only 0\.(69|70) mm/);
    }
    assertSilent(await ringOn([plate], 'diameter: 4, wall: 0.82, at: top', 1.5), 'hanger-weak');
  });

  it('that is thin all over is one fault, at its narrowest', async () => {
    const made = await ringOn([plate], 'diameter: 8.6, wall: 0.7, at: {up: 14.8}', 3);
    // The chord is 2.8 mm, the wall 0.7 mm, and nothing between them is as wide as it should be.
    assertNear(only(made, 'hanger-weak').width!, 0.7, 0.01);
  });

  it('is told every joint that is weak, where it stands on two legs', async () => {
    const legs = [
      'base: {rectangle: [30, 10]}',
      'left: {path: "M0 0h1.2v4h-1.2z", nudge: {left: 3.1, up: 8}}',
      'right: {from: left, nudge: {right: 5}}',
    ];
    const made = await make(
      specOf(legs, 'body: [base, left, right], hanger: {ring: {at: {up: 9.6}, diameter: 3, wall: 2, on: base}}'),
    );
    const reported = [...found(made, 'hanger-weak'), ...found(made, 'weak-bridge'), ...found(made, 'thin-stroke')];
    const places = reported.flatMap(placesIn);
    assert.equal(places.length, 2);
    for (const { width } of places) assertNear(width!, 1.2, 0.02);
    assert.ok(places.some(({ points }) => points[0]!.x < 0) && places.some(({ points }) => points[0]!.x > 0));
  });

  it('set so deep that its lug is gone is told what is left between its hole and the edge', async () => {
    // Exact: the hole's edge is 10 − 6 − 2 = 2 mm from the plate's.
    const made = await ringOn([plate], 'diameter: 4, wall: 1, at: {up: 6}', 2.5);
    const issue = only(made, 'hanger-weak');
    assertNear(issue.width!, 2, 0.01);
    assertSilent(await ringOn([plate], 'diameter: 4, wall: 1, at: {up: 6}', 1.98), 'hanger-weak');
  });

  it('that touches nothing falls out, said once', async () => {
    const many = await ringOn([plate], 'at: top, nudge: {up: 10}', 1.5, ', parts: many');
    const issue = only(many, 'hanger-weak');
    assert.equal(issue.severity, 'error');
    assert.deepEqual(issue.points, [many.pieces[0]!.hangers[0]!.centre]);
    const one = await ringOn([plate], 'at: top, nudge: {up: 10}', 1.5);
    assertSilent(one, 'hanger-weak');
    assert.equal(found(one, 'loose-part').length, 1);
  });

  it('as it is placed by itself holds, on plates and on stout lettering', async () => {
    for (const body of [
      plate,
      'body: {ellipse: [50, 30]}',
      'body: {polygon: {sides: 6, across: 40}}',
      'body: {text: Mint, font: Nunito, weight: 800, width: 80, grow: 0.5}',
    ]) {
      for (const at of ['auto', 'top', 'left']) {
        assertSilent(await ringOn([body], `at: ${at}`, 1.5, ', parts: many'), 'hanger-weak', `${body} at ${at}`);
      }
    }
  });

  it('is no reason to blame thin strokes elsewhere on it', async () => {
    const made = await ringOn(['body: {text: Sorrel, font: Great Vibes, width: 82}'], 'at: auto', 1.5, ', parts: many');
    const thin = found(made, 'thin-stroke');
    assert.ok(thin.length > 0);
    for (const issue of thin) assert.equal(placeOf(made.report, issue).line, 4);
  });
});

const neckCodes = ['weak-bridge', 'thin-stroke', 'hanger-weak', 'hole-near-edge'];

const near = (outline: Region, point: Point) => outline.length > 0 && distance(outline, [[point]]) < 0.05;

describe('Every neck of a piece', () => {
  const random = seededRandom(20);
  const between = (low: number, high: number) => (low + (high - low) * random()).toFixed(2);
  const pick = <T>(...all: readonly T[]) => all[Math.floor(random() * all.length)]!;

  const body = () =>
    pick(
      `{rectangle: [${between(15, 50)}, ${between(6, 30)}], radius: ${between(0, 3)}}`,
      `{ellipse: [${between(12, 50)}, ${between(8, 30)}]}`,
      `{polygon: {sides: ${pick(3, 5, 6)}, across: ${between(15, 40)}}}`,
      `{text: ${pick('Dill', 'Mint', 'Sorrel', 'oO')}, font: ${pick('Nunito', 'Pacifico')}, width: ${between(30, 80)}}`,
    );
  const hanger = (minWeb: number) => {
    const at = pick('top', 'left', 'bottom', '40', `{up: ${between(-8, 12)}, right: ${between(-12, 12)}}`);
    return pick(
      `ring: {at: ${at}, diameter: ${between(2, 5)}, wall: ${between(minWeb, minWeb + 2)}, sink: ${between(-1.5, 3)}}`,
      `hole: {at: ${at}, diameter: ${between(2, 5)}, inset: ${between(0.3, 3)}}`,
      `slot: {at: ${at}, width: 3, length: ${between(4, 12)}, inset: ${between(0.3, 3)}}`,
    );
  };

  it('is told once, by the check of the hanger if it is there and by that of the body if it is not', async () => {
    let atHanger = 0;
    let elsewhere = 0;
    for (let i = 0; i < 120; i++) {
      const minWeb = Number(between(1, 3));
      const shapes = [`body: ${body()}`, `window: {ellipse: ${between(3, 6)}, nudge: {right: ${between(-8, 8)}}}`];
      const piece = `body: [body], ${pick('', 'cut: [window], ')}parts: ${pick('one', 'many')}, hanger: {${hanger(minWeb)}}`;
      const text = specOf(shapes, piece, [`stock: {min_web: ${minWeb} mm}`]);
      const made = await make(text);
      const findings = made.issues.filter(({ code, width }) => neckCodes.includes(code) && width !== undefined);
      const causes = findings.map(({ code, path }) => `${code} ${path.join('/')}`);
      assert.equal(new Set(causes).size, causes.length, `one finding for each cause: ${text}`);
      for (const finding of findings) {
        const widths = placesIn(finding).map(({ width }) => width!);
        assert.equal(finding.width, Math.min(...widths), text);
      }
      const reported = findings.flatMap((finding) =>
        placesIn(finding).map((place) => ({ ...place, code: finding.code })),
      );
      const necks = findNecks(made.region, minWeb);
      assert.equal(reported.length, necks.length, text);
      const held = made.pieces[0]!.hangers[0];
      for (const { kind, ends, width } of necks) {
        const here = reported.filter(({ points }) => points[0] === ends[0] || apart([points[0]!, ends[0]]) < 1e-9);
        const hangs = held && ends.some((end) => near(held.opening, end) || near(held.lug ?? [], end));
        const same = here.filter(({ points }) => apart([points[1]!, ends[1]]) < 1e-9);
        assert.equal(same.length, 1, text);
        assertNear(same[0]!.width!, width, 1e-9);
        const expected = hangs
          ? held.kind === 'ring'
            ? 'hanger-weak'
            : 'hole-near-edge'
          : kind === 'stroke'
            ? 'thin-stroke'
            : 'weak-bridge';
        assert.equal(same[0]!.code, expected, text);
        if (hangs) atHanger++;
        else elsewhere++;
      }
    }
    assert.ok(atHanger >= 40 && elsewhere > 5, `${atHanger} at hangers, ${elsewhere} elsewhere`);
  });
});
